using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Analysis;

/// <summary>
/// Notes with their findings drawn in: below a line, <c>^^^ rule level</c> under the exact characters meant. All findings
/// are compared, one to one: one too many fails as well as one too few.
/// </summary>
internal static class MarkedFindings
{
    public static readonly DateOnly Today = new(2026, 11, 25);

    private const string Dog = "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n2026-11-01 check\n";
    private const string Cat = "pet Tansy\nspecies cat\nborn 2020-05-01\nsex male neutered\n2026-11-01 check\n";

    /// <summary>Checks lines of a grown medium dog's entry.</summary>
    public static NoteAnalysis CheckDog(string marked) => Check(Dog + marked);

    /// <summary>Checks lines of a grown male cat's entry.</summary>
    public static NoteAnalysis CheckCat(string marked) => Check(Cat + marked);

    /// <summary>Checks a whole note.</summary>
    public static NoteAnalysis Check(string marked)
    {
        var note = new StringBuilder();
        var expected = new List<string>();
        int line = -1;
        foreach (string text in marked.ReplaceLineEndings("\n").Split('\n'))
        {
            if (text.TrimStart().StartsWith('^'))
            {
                int start = text.IndexOf('^', StringComparison.Ordinal);
                int end = text.LastIndexOf('^') + 1;
                expected.Add($"{line}:{start}-{end} {text[end..].Trim()}");
            }
            else
            {
                note.Append(text).Append('\n');
                line++;
            }
        }

        NoteAnalysis analysis = Read(note.ToString());
        Assert.Equal(expected, analysis.Findings.Select(f => $"{f.Line}:{f.Span.Start}-{f.Span.End} {f.Rule} {f.Level.ToString().ToLowerInvariant()}"));
        return analysis;
    }

    public static NoteAnalysis Read(string text) => NoteAnalysis.Of(Note.Read(text), Today);

    /// <summary>The strongest level found at the last line that is not empty; null when nothing is found there.</summary>
    public static FindingLevel? LevelOfLastLine(string text)
    {
        NoteAnalysis analysis = Read(text.TrimEnd('\n'));
        int last = analysis.Note.Syntax.Lines.Length - 1;
        return analysis.Findings.Where(f => f.Line == last).Select(f => (FindingLevel?)f.Level).Max();
    }

    public static FindingLevel? LevelForDog(string line) => LevelOfLastLine(Dog + line);

    public static FindingLevel? LevelForCat(string line) => LevelOfLastLine(Cat + line);
}
