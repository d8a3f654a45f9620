using System.Collections.Immutable;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Checks;

/// <summary>What a check lacks.</summary>
public static class MissingItems
{
    /// <summary>
    /// What a check does not name, in any of the check entries of its day, head to tail. What was skipped is named, and so
    /// is what stands half typed. <c>else ok</c> speaks for the parts, never for a measurement.
    /// </summary>
    public static ImmutableArray<CheckItem> Of(Document document, Entry check)
    {
        bool restOk = false;
        var named = new HashSet<string>();
        foreach (Entry entry in document.Note.Entries)
        {
            if (entry.Line != check.Line && !(check.Head.Date is { } day && entry.Head.Date == day && entry.Head.Kind == "check"))
            {
                continue;
            }

            foreach (Placed<NoteItem> item in entry.Items)
            {
                restOk |= item.Value is RestOk;
                named.Add(EntryLines.Subject(item.Value).Word);
            }

            foreach (int line in entry.NotUnderstood)
            {
                named.Add(LineAt.WordOf(document.Syntax.Lines[line])?.Word ?? "");
            }
        }

        return [.. CheckItems.For(document.Record.Pet).Where(item => !named.Contains(item.Word.Word) && !(restOk && !item.IsMeasured))];
    }
}
