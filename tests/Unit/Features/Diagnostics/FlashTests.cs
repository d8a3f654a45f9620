using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Diagnostics;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Diagnostics;

/// <summary>
/// A technician's log typed letter by letter: what is marked in the line while it is typed must be a finding of the whole line.
/// Anything else appears and goes, and draws the eye for nothing.
/// </summary>
public class FlashTests
{
    [Theory]
    [InlineData("juniper-after-surgery")]
    [InlineData("marlow")]
    [InlineData("tansy")]
    public void Nothing_flashes_while_a_log_is_typed(string sample)
    {
        string[] all = File.ReadAllText(Repository.PathOf($"samples/{sample}.hnote")).ReplaceLineEndings("\n").Split('\n');
        int first = Math.Max(Array.FindIndex(all, line => line.StartsWith("20", StringComparison.Ordinal)) + 20, all.Length - Typed);
        string before = string.Join('\n', all[..first]) + "\n";
        Document note = Document.Open("file:///notes/typed.hnote", 1, before, Cursor.Today);
        List<string> flashes = [];
        List<string> early = [];
        for (int at = first; at < all.Length; at++)
        {
            List<(string Typed, string Rule)> shown = [];
            string line = all[at];
            for (int end = 1; end <= line.Length; end++)
            {
                int place = note.Syntax.Lines.Length - 1;
                note = note.Edit(DocumentEdit.Insert(place, end - 1, line[(end - 1)..end]), 1);
                NoteFinding[] here = [.. StillTyping.Without(note, note.Analysis.Findings, new Place(place, end))
                    .Where(finding => finding.Line == place)];
                shown.AddRange(here.Select(finding => (line[..end], finding.Rule)));
                early.AddRange(here.Where(finding => finding.Level < FindingLevel.Urgent).Select(finding => $"{line[..end]}| {finding.Rule}"));
            }

            HashSet<string> whole = [.. note.Analysis.Findings.Where(finding => finding.Line == note.Syntax.Lines.Length - 1).Select(finding => finding.Rule)];
            flashes.AddRange(shown.Where(one => !whole.Contains(one.Rule)).Select(one => $"{one.Typed}| {one.Rule}"));
            note = note.Edit(DocumentEdit.Insert(note.Syntax.Lines.Length - 1, line.Length, "\n"), 1);
        }

        Assert.True(flashes.Count == 0, string.Join("\n", flashes));
        Assert.True(early.Count == 0, string.Join("\n", early));
    }

    private const int Typed = 120;
}
