using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Heads of entries, and whole entries to fill in.</summary>
public class EntryCompletionTests
{
    private const string Pet = "pet Marlow\nspecies dog\nsex male neutered\n";

    [Theory]
    [InlineData(Pet + "\n2026-10-04 check\n  gums pink\n\n|")]
    [InlineData(Pet + "\n2026-10-04 check\n  gums pink\n\n|\n\n2026-12-01 log\n")]
    public void At_the_start_of_a_blank_line_a_new_entry_comes_first(string marked) =>
        Assert.Equal(["2026-11-25 check", "2026-11-25 log", "2026-11-25 visit"], Offered.Labels(marked)[..3]);

    [Fact]
    public void A_kind_that_today_has_not_yet_comes_before_one_it_has() =>
        Assert.Equal(["2026-11-25 log", "2026-11-25 visit", "2026-11-25 check"], Offered.Labels(Pet + "2026-11-25 check\n  gums pink\n\n|")[..3]);

    [Theory]
    [InlineData(Pet + "2026-11|", "2026-11-25 check", Pet + "2026-11-25 check")]
    [InlineData(Pet + "2026-11-2| check by owner", "2026-11-24", Pet + "2026-11-24 check by owner")]
    [InlineData(Pet + "\nlo|", "2026-11-25 log", Pet + "\n2026-11-25 log")]
    [InlineData("2026-11-25 |", "visit", "2026-11-25 visit")]
    [InlineData("2026-11-25 08:15 ch|", "check", "2026-11-25 08:15 check")]
    [InlineData("2026-11-25 check b|", "by", "2026-11-25 check by")]
    [InlineData("2026-10-04 log by the elder child\n2026-11-25 check by the e|", "the elder child", "2026-10-04 log by the elder child\n2026-11-25 check by the elder child")]
    public void Dates_kinds_and_writers(string marked, string label, string expected) => Assert.Equal(expected, Offered.Taking(marked, label));

    [Theory]
    [InlineData("2026-11-25 check |")]
    [InlineData("2026-11-25 |check")]
    public void One_kind_is_enough(string marked) => Assert.DoesNotContain("log", Offered.Labels(marked));

    [Fact]
    public void Before_a_word_at_the_start_of_a_line_no_entry_is_begun() =>
        Assert.DoesNotContain(Offered.At(Pet + "2026-10-04\n|gums pink").Items, item => item.Kind is CompletionKind.Entry or CompletionKind.Lines);

    [Fact]
    public void Indented_lines_belong_to_their_entry() =>
        Assert.DoesNotContain(Offered.At(Pet + "2026-10-04\n  |").Items, item => item.Kind is CompletionKind.Entry or CompletionKind.Lines);

    [Fact]
    public void A_whole_check_is_in_the_order_of_an_examination_and_holds_the_known_lumps()
    {
        CompletionItem whole = Offered.Item(Pet + "2026-10-04 check\n  lump L-flank @lower 12mm soft\n  lump R-ear-tip 3mm\n2026-10-20 check\n  lump R-ear-tip gone\n\n|", "2026-11-25 check, whole");
        string[] stops = whole.Snippet!.Split('\n');
        Assert.Equal("2026-11-25 check", stops[0]);
        Assert.Equal(["  rr ${1}/30s", "  alert ${2}"], stops[1..3]);
        Assert.Contains("  gland ${", whole.Snippet, StringComparison.Ordinal);
        Assert.Contains(stops, line => line.StartsWith("  hr ${", StringComparison.Ordinal) && line.EndsWith("}/15s", StringComparison.Ordinal));
        Assert.StartsWith("  lump L-flank @lower ${", stops[^9], StringComparison.Ordinal);
        Assert.StartsWith("  mood ${", stops[^1], StringComparison.Ordinal);
        Assert.DoesNotContain(stops, line => line.Contains("glucose", StringComparison.Ordinal) || line.Contains("R-ear-tip", StringComparison.Ordinal));
        Assert.Equal(stops.Length - 1, stops.Count(line => line.Contains("${", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("species cat\nsex female\nmed insulin 2 unit every 12h\n\n|", "glucose")]
    [InlineData("species dog\nsex female\n\n|", "gland")]
    [InlineData("species dog\nunits us\n\n|", "weight ${5}lb")]
    public void A_whole_check_suits_the_pet(string marked, string expected) =>
        Assert.Contains("  " + expected, Offered.Item(marked, "2026-11-25 check, whole").Snippet, StringComparison.Ordinal);

    /// <summary>What was not looked at must not be on record because somebody took an offer.</summary>
    [Theory]
    [InlineData("2026-11-25 check, whole")]
    [InlineData("2026-11-25 log, whole")]
    public void As_plain_text_a_whole_entry_records_nothing(string label)
    {
        Note note = Note.Read(Offered.Taking(Pet + "\n|", label));
        Assert.Empty(note.Problems);
        Assert.Empty(Assert.Single(note.Entries).Items);
    }

    [Fact]
    public void Lines_end_as_the_note_ends_them()
    {
        var document = Document.Open("file:///a.hnote", 1, "pet Tansy\r\nspecies cat\r\n", Cursor.Today);
        CompletionItem whole = CompletionFeature.At(document, new Place(2, 0), FeatureSettings.Default).Items.First(item => item.Kind == CompletionKind.Lines);
        Assert.Equal(whole.Edit.NewText.Count(c => c == '\n'), whole.Edit.NewText.Split("\r\n").Length - 1);
        Assert.DoesNotContain(whole.Edit.NewText.Replace("\r\n", "", StringComparison.Ordinal), c => c is '\r' or '\n');
        Assert.Contains("\r\n  ", whole.Snippet, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cat_is_not_walked() =>
        Assert.DoesNotContain("walk", Offered.Item("species cat\n\n|", "2026-11-25 log, whole").Edit.NewText, StringComparison.Ordinal);
}
