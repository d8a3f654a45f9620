using System.Text;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features;

/// <summary>All there is to know of a document, written out: two that write the same are the same.</summary>
internal static class NoteDump
{
    public static string Of(Document document)
    {
        Note note = document.Note;
        var text = new StringBuilder(TreeDump.Of(note.Syntax));
        Section("opening", note.Opening.Facts, note.Opening.Texts, note.Opening.NotUnderstood, note.Opening.Problems, text);
        foreach (Entry entry in note.Entries)
        {
            Section($"entry {entry.Line} {entry.Head}", entry.Items, entry.Texts, entry.NotUnderstood, entry.Problems, text);
            text.AppendLine($"  facts {string.Join(' ', entry.Facts.Select(fact => fact.Line))}");
        }

        text.AppendLine($"current from {document.Analysis.Record.CurrentFrom}");
        foreach (NoteReading reading in document.Analysis.Record.Readings)
        {
            text.AppendLine($"reading {reading}");
        }

        Findings("finding", document.Analysis.Findings, text);
        Findings("current", document.Analysis.CurrentFindings, text);
        return text.ToString();
    }

    private static void Section(
        string name, IEnumerable<Placed<NoteItem>> items, IEnumerable<FreeTextBlock> texts, IEnumerable<int> notUnderstood, IEnumerable<PlacedProblem> problems, StringBuilder text)
    {
        text.AppendLine(name);
        text.AppendLine($"  items {string.Join(' ', items.Select(item => $"{item.Line}:{item.Value.Word.Word}"))}");
        text.AppendLine($"  texts {string.Join(' ', texts)}");
        text.AppendLine($"  not understood {string.Join(' ', notUnderstood)}");
        text.AppendLine($"  problems {string.Join(' ', problems)}");
    }

    private static void Findings(string name, IEnumerable<NoteFinding> findings, StringBuilder text)
    {
        foreach (NoteFinding finding in findings)
        {
            text.AppendLine($"{name} {finding.Line} {finding.Span} {finding.Level} {finding.Rule} {finding.Message} [{string.Join(' ', finding.Evidence)}] {finding.Source} {finding.Nearest}");
        }
    }
}
