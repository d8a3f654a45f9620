using CsCheck;
using HealthNotes.Features.Merging;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Merging;

/// <summary>Two versions of a note become one, and no line is lost.</summary>
public class NoteMergeTests
{
    private const string Before = "pet Marlow\nspecies dog\n\n2026-10-01 check\n  hr 18/15s\n  gums pink\n\n2026-10-05 log\n  ate all\n";

    [Theory]
    [InlineData("  hr 18/15s\n", "  hr 18/15s\n  crt 1.5s\n", "  gums pink\n", "  gums pink\n  weight 20kg\n", "  hr 18/15s\n  crt 1.5s\n  gums pink\n  weight 20kg\n")]
    [InlineData("  hr 18/15s\n", "", "  ate all\n", "  ate half\n", "2026-10-01 check\n  gums pink\n\n2026-10-05 log\n  ate half\n")]
    [InlineData("species dog\n", "species dog\nborn 2017\n", "species dog\n", "species dog\nborn 2017\n", "species dog\nborn 2017\n\n")]
    [InlineData("  ate all\n", "  ate all\n\n2026-10-09 log\n  vomit none\n", "  ate all\n", "  ate all\n  drank 600ml\n\n2026-10-07 log\n  slept well\n", "  ate all\n  drank 600ml\n\n2026-10-07 log\n  slept well\n\n2026-10-09 log\n  vomit none\n")]
    [InlineData("2026-10-05 log\n  ate all\n", "", "  gums pink\n", "  gums pink moist\n", "  gums pink moist\n\n")]
    public void What_either_side_did_is_done(string was, string mine, string had, string theirs, string expected)
    {
        MergedNote merged = NoteMerge.Of(Before, Before.Replace(was, mine, StringComparison.Ordinal), Before.Replace(had, theirs, StringComparison.Ordinal));
        Assert.Contains(expected, merged.Text, StringComparison.Ordinal);
        Assert.Empty(merged.ChangedTwice);
    }

    [Fact]
    public void A_line_that_both_changed_is_there_in_both_ways_and_is_named()
    {
        MergedNote merged = NoteMerge.Of(Before, Before.Replace("18/15s", "19/15s", StringComparison.Ordinal), Before.Replace("18/15s", "20/15s", StringComparison.Ordinal));
        Assert.Contains("  hr 19/15s\n  hr 20/15s\n", merged.Text, StringComparison.Ordinal);
        Assert.Equal("  hr 18/15s", Assert.Single(merged.ChangedTwice));
    }

    [Fact]
    public void Of_two_lines_alike_one_stays_where_each_side_took_out_another() => Assert.Equal(
        "2026-10-01 log\n  ate all\n  vomit",
        NoteMerge.Of("2026-10-01 log\n  vomit\n  ate all\n  vomit", "2026-10-01 log\n  vomit\n  ate all", "2026-10-01 log\n  ate all\n  vomit").Text);

    [Fact]
    public void Line_breaks_and_the_mark_of_ours_stay()
    {
        string ours = "\ufeff" + Before.ReplaceLineEndings("\r\n");
        Assert.Equal(ours.Replace("  ate all\r\n", "  ate all\r\n  drank 1l\r\n", StringComparison.Ordinal), NoteMerge.Of(Before, ours, Before + "  drank 1l\n").Text);
    }

    [Theory]
    [InlineData("a\n<<<<<<< x\nb\n=======\nc\n>>>>>>> y\nd\n", "a\nb\nc\nd\n")]
    [InlineData("a\n<<<<<<< x\nb\n||||||| z\nold\n=======\nc\n>>>>>>> y\n", "a\nb\nc\n")]
    [InlineData("<<<<<<< x\n2026-10-01 log\n  ate all\n=======\n2026-10-01 log\n  ate half\n>>>>>>> y\n", "2026-10-01 log\n  ate all\n  ate half\n")]
    [InlineData("a\n<<<<<<< x\nb\n", null)]
    [InlineData("a\n=======\nb\n>>>>>>> y\n", null)]
    [InlineData("a\n", null)]
    public void Marks_of_a_conflict_are_taken_out(string text, string? expected) => Assert.Equal(expected, NoteMerge.OfMarked(text)?.Text);

    private static readonly Gen<string> Line = Gen.OneOf("  hr 18/15s", "  gums pink", "  weight 20kg", "", "  > free", "# comment", "nonsense", "2026-10-01 check", "2026-10-02 log", "2026-10-02 08:15 log", "2026-10-03 check", "pet A");

    private static readonly Gen<(List<string> Before, List<string> Ours, List<string> Theirs)> Versions =
        from before in Line.List[0, 14]
        from ours in Edits
        from theirs in Edits
        select (before, Edited(before, ours, "o"), Edited(before, theirs, "t"));

    private static Gen<List<(int At, bool Add, string Line)>> Edits => Gen.Select(Gen.Int[0, 20], Gen.Bool, Line).List[0, 6];

    private static List<string> Edited(List<string> before, List<(int At, bool Add, string Line)> edits, string who)
    {
        List<string> lines = [.. before];
        int number = 0;
        foreach ((int at, bool add, string line) in edits)
        {
            if (add)
            {
                // every other new line is one that nobody else has
                lines.Insert(at % (lines.Count + 1), number++ % 2 == 0 && line.StartsWith("  ", StringComparison.Ordinal) ? $"{line} {who}{number}" : line);
            }
            else if (lines.Count > 0)
            {
                lines.RemoveAt(at % lines.Count);
            }
        }

        return lines;
    }

    /// <summary>What was added is there as often as either side has it; what both left alone stays.</summary>
    [Fact]
    public void No_line_is_lost() => Versions.ForAll(
        versions =>
        {
            string Text(List<string> lines) => string.Join('\n', lines);
            List<string> merged = [.. NoteMerge.Of(Text(versions.Before), Text(versions.Ours), Text(versions.Theirs)).Text.Split('\n')];
            foreach (string line in versions.Ours.Concat(versions.Theirs).Where(line => line.Length > 0).Distinct())
            {
                int Count(List<string> lines) => lines.Count(one => one == line);
                int wanted = Count(versions.Before) switch
                {
                    0 => Math.Max(Count(versions.Ours), Count(versions.Theirs)),
                    1 => Math.Min(1, Math.Min(Count(versions.Ours), Count(versions.Theirs))),
                    _ => 0, // each side may have taken it out of another entry
                };
                Assert.True(Count(merged) >= wanted, $"{line} in\n{Text(merged)}");
            }
        },
        iter: 3000);

    [Fact]
    public void A_version_joined_with_itself_is_itself() => Versions.ForAll(
        versions =>
        {
            string ours = string.Join('\n', versions.Ours);
            Assert.Equal(ours, NoteMerge.Of(string.Join('\n', versions.Before), ours, ours).Text);
            Assert.Equal(ours, NoteMerge.Of(null, ours, ours).Text);
        },
        iter: 300);
}
