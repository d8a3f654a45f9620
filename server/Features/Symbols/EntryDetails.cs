using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Symbols;

/// <summary>What is shown beside an entry: how many lines it holds, and how many findings of each level that asks something.</summary>
internal sealed class EntryDetails
{
    private readonly int[] watch;
    private readonly int[] call;
    private readonly int[] urgent;

    /// <summary>Counts the findings of a note, entry by entry.</summary>
    public EntryDetails(Document document)
    {
        int count = document.Note.Entries.Length;
        watch = new int[count];
        call = new int[count];
        urgent = new int[count];
        int entry = -1;
        foreach (NoteFinding finding in document.Analysis.Findings)
        {
            // findings come in line order, so the entries are walked once
            while (entry + 1 < count && document.Note.Entries[entry + 1].Line <= finding.Line)
            {
                entry++;
            }

            int[]? counts = finding.Level switch { FindingLevel.Watch => watch, FindingLevel.Call => call, FindingLevel.Urgent => urgent, _ => null };
            if (entry >= 0 && counts is not null)
            {
                counts[entry]++;
            }
        }
    }

    /// <summary><c>9 lines, 2 to watch</c>: the head, blank lines and comments do not count.</summary>
    public string Of(Document document, int index)
    {
        Entry entry = document.Note.Entries[index];
        int lines = 0;
        for (int line = entry.Line + 1; line < LineShape.EndOf(document, index); line++)
        {
            lines += document.Syntax.Lines[line].Kind is LineKind.Blank or LineKind.Comment ? 0 : 1;
        }

        return (lines == 1 ? "1 line" : $"{lines} lines")
            + (watch[index] > 0 ? $", {watch[index]} to watch" : "")
            + (call[index] > 0 ? $", {call[index]} to call the vet about" : "")
            + (urgent[index] > 0 ? $", {urgent[index]} urgent" : "");
    }
}
