using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Navigation;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Navigation;

public class RenameTests
{
    [Theory]
    [InlineData("2026-01-01 check\n  lump L-flank @lo|wer 12mm # @lower\n  lump R-flank @lower\n2026-02-01 check\n  lump L-flank @Lower 13mm\n  skip lump L-flank @lower\n", "ribs", "2026-01-01 check\n  lump L-flank @ribs 12mm # @lower\n  lump R-flank @lower\n2026-02-01 check\n  lump L-flank @ribs 13mm\n  skip lump L-flank @ribs\n")]
    [InlineData("2026-01-01 check\n  lump L-fl|ank soft\n  recheck lump flank L in 2w\n  ear L clean\n", "L-ribs", "2026-01-01 check\n  lump L-ribs soft\n  recheck lump L-ribs in 2w\n  ear L clean\n")]
    [InlineData("med benazepryl 5mg every 24h\n2026-01-01 log\n  gave bena|zepryl 5mg\n  gave Benazepryl\n  gave carprofen\n", "benazepril", "med benazepril 5mg every 24h\n2026-01-01 log\n  gave benazepril 5mg\n  gave benazepril\n  gave carprofen\n")]
    [InlineData("med benazepril 5mg every 24h\n2026-01-01 log\n  gave bena|zepryl 5mg\n", "benazepril", "med benazepril 5mg every 24h\n2026-01-01 log\n  gave benazepril 5mg\n")]
    [InlineData("2026-01-01 check\n  lump L-flank |@a\n", "@b", "2026-01-01 check\n  lump L-flank @b\n")]
    [InlineData("2026-01-01 check\n  lump L-flank @a|\n", " @狗 ", "2026-01-01 check\n  lump L-flank @狗\n")]
    public void A_rename_reaches_every_line(string marked, string name, string expected)
    {
        Cursor at = Cursor.In(marked);
        RenameResult result = NavigationFeature.Rename(at.Document, at.Place, name);
        Assert.Null(result.Refusal);
        Assert.Equal(expected, Cursor.Apply(at.Document, result.Edits));
    }

    [Theory]
    [InlineData("lump L-flank @lo|wer 12mm", "", "A name is needed")]
    [InlineData("lump L-flank @lo|wer 12mm", "@", "A name is needed")]
    [InlineData("lump L-flank @lo|wer 12mm", "a\nb", "A name is needed")]
    [InlineData("lump L-flank @lo|wer 12mm", "two words", "cannot be a tag")]
    [InlineData("lump L-flank @lo|wer\n  lump L-flank @upper", "UPPER", "in use already (line 5)")]
    [InlineData("lump L-fl|ank 12mm", "L-flnk", "Did you mean `flank`")]
    [InlineData("lump L-fl|ank 12mm", "soft", "cannot be the site")]
    [InlineData("lump L-fl|ank 12mm", "L-gland5", "four pairs")]
    [InlineData("lump L-fl|ank\n  lump R-flank", "R-flank", "in use already (line 5)")]
    [InlineData("gave bena|zepril 5mg", "x 5mg", "cannot be the medicine's name")]
    [InlineData("gave bena|zepril 5mg", "5mg", "cannot be the medicine's name")]
    [InlineData("med a|b 5mg every 24h\n  med cd 5mg every 24h", "CD", "in use already (line 5)")]
    [InlineData("hr 18/1|5s", "x", "nothing here that can be renamed")]
    [InlineData("ear |L clean", "R", "nothing here that can be renamed")]
    [InlineData("lu|mp L-flank", "wound", "nothing here that can be renamed")]
    public void What_cannot_be_renamed_says_why(string line, string name, string why)
    {
        Cursor at = Cursor.In($"pet Tansy\nspecies cat\n2026-01-01 visit\n  {line}\n");
        RenameResult result = NavigationFeature.Rename(at.Document, at.Place, name);
        Assert.Empty(result.Edits);
        Assert.Contains(why, result.Refusal, StringComparison.Ordinal);
    }

    /// <summary>Several observations of a line may name the same, or something else.</summary>
    [Theory]
    [InlineData("lump L-flank @lo|wer 12mm, lump R-flank @lower 3mm\n  lump L-flank @lower 13mm", "ribs", "lump L-flank @ribs 12mm, lump R-flank @lower 3mm\n  lump L-flank @ribs 13mm")]
    [InlineData("gave bena|zepril 5mg 08:00 20:00", "enalapril", "gave enalapril 5mg 08:00 20:00")]
    [InlineData("gums pink, lump L-fl|ank 12mm", "L-ribs", "gums pink, lump L-ribs 12mm")]
    public void Every_observation_of_a_line_is_renamed(string line, string name, string expected)
    {
        Cursor at = Cursor.In($"2026-01-01 visit\n  {line}\n");
        RenameResult result = NavigationFeature.Rename(at.Document, at.Place, name);
        Assert.Null(result.Refusal);
        Assert.Equal($"2026-01-01 visit\n  {expected}\n", Cursor.Apply(at.Document, result.Edits));
    }

    [Theory]
    [InlineData("lump L-flank ‹@lower› 12mm", "@lower")]
    [InlineData("lump ‹left flank› 12mm", "left flank")]
    [InlineData("gave ‹fish oil› 5ml", "fish oil")]
    public void What_would_be_renamed_is_shown(string line, string name)
    {
        Cursor at = Cursor.In($"2026-01-01 log\n  {line}\n");
        Assert.Equal(new RenameTarget(at.Range, name), NavigationFeature.PrepareRename(at.Document, at.Place));
    }

    [Fact]
    public void A_rename_to_the_same_name_changes_nothing()
    {
        Cursor at = Cursor.In("2026-01-01 check\n  lump L-flank @lo|wer\n");
        RenameResult result = NavigationFeature.Rename(at.Document, at.Place, "lower");
        Assert.Empty(result.Edits);
        Assert.Null(result.Refusal);
    }

    /// <summary>Lines that name few things many times, so that a rename has something to do.</summary>
    private static readonly Gen<string> Lines = Gen.OneOf(
        Gen.Select(
            Gen.OneOf("lump", "wound", "skip lump", "recheck wound", "pain-site"), Gen.OneOf("L-flank", "chin"), Gen.OneOf("", " @lower", " @b"), Gen.OneOf("", " 12mm", " in 2w", " soft # @lower"),
            (word, site, tag, rest) => $"  {word} {site}{tag}{rest}"),
        Gen.Select(Gen.OneOf("gave", "missed", "stop", "med"), Gen.OneOf("benazepril", "fish oil"), Gen.OneOf("", " 5mg", " with food"), (word, name, rest) => $"  {word} {name}{rest}"),
        Gen.Const("2026-01-01 check"),
        Soup.Line);

    [Fact]
    public void A_rename_and_the_reverse_give_the_same_note_back()
    {
        int renamed = 0;
        Gen.Select(Lines.Array[1, 12], Gen.OneOf("zz", "R-tail", "left knee", "mid", "12", "two words", "@q", "chin", "x5mg", "é\u0301狗")).ForAll((lines, name) =>
        {
            Document note = Cursor.Note("2026-01-01 check\n" + string.Join('\n', lines).Replace("\r", ""));
            foreach (Place place in Places(note))
            {
                if (NavigationFeature.PrepareRename(note, place) is not { } target || target.Range.Start != place)
                {
                    continue;
                }

                Assert.True(target.Name.Length > 0);
                RenameResult result = NavigationFeature.Rename(note, target.Range.Start, name);
                Assert.True(result.Refusal is null || result.Edits.IsEmpty);
                Assert.Equal(result.Edits.Length, result.Edits.Select(edit => edit.Range.Start.Line).Distinct().Count());
                if (result.Edits.IsEmpty)
                {
                    continue;
                }

                Document after = Document.Open(note.Uri, 2, Cursor.Apply(note, result.Edits), note.Today);
                int problems = note.Note.Problems.Count();
                Assert.True(after.Note.Problems.Count() <= problems);

                // One spelling becomes another and back; several spellings, or two medicines, have become one for good.
                bool oneSpelling = result.Edits.All(edit => TextAt(note, edit.Range).Equals(target.Name, StringComparison.OrdinalIgnoreCase));
                bool merged = NavigationFeature.References(after, place, true).Length != NavigationFeature.References(note, place, true).Length;
                bool typeable = !target.Name.Any(char.IsControl);
                if (oneSpelling && !merged && typeable && after.Note.Problems.Count() == problems)
                {
                    RenameResult back = NavigationFeature.Rename(after, place, target.Name);
                    Assert.Null(back.Refusal);
                    Assert.Equal(note.Syntax.Print(), Cursor.Apply(after, back.Edits), ignoreCase: true);
                    Interlocked.Increment(ref renamed);
                }
            }
        }, iter: Effort.Times(150));
        Assert.True(renamed > 100, $"only {renamed} were renamed");
    }

    [Fact]
    public void Nothing_throws_at_any_place() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        foreach (Place place in Places(note).Append(new Place(99, 99)).Append(new Place(-1, -1)))
        {
            Highlight[] all = [.. NavigationFeature.Highlights(note, place)];
            Assert.All(all, found => Assert.True(found.Range.Start < found.Range.End && note.Clamp(found.Range.End) == found.Range.End));
            Assert.Equal(all.Select(found => found.Range.Start).Order(), all.Select(found => found.Range.Start));
            Assert.True(all.Length > 0 || NavigationFeature.Definition(note, place) is null);
            _ = NavigationFeature.Rename(note, place, "x");
        }
    }, iter: Effort.Times(60));

    private static string TextAt(Document note, PlaceRange range) =>
        note.Syntax.Lines[range.Start.Line].Text[range.Start.Character..range.End.Character];

    private static IEnumerable<Place> Places(Document note) =>
        from line in Enumerable.Range(0, note.Syntax.Lines.Length)
        from character in Enumerable.Range(0, note.Syntax.Lines[line].Text.Length + 1)
        select new Place(line, character);
}
