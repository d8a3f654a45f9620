using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lump: watch when it is first noted, something to know when it was noted before. Growth is another rule's matter.</summary>
public sealed class LumpRule : IRule
{
    /// <inheritdoc/>
    public string Name => "lump";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(RuleContext context)
    {
        var first = new Dictionary<(string Site, string? Tag), (int Line, DateOnly? Day)>();
        foreach ((Entry entry, int line, NoteItem item) in context.Items().OrderBy(placed => placed.Entry.Head.Date))
        {
            if (item is not Finding { Word.Word: "lump" } lump || MammaryLumpRule.IsMammary(lump))
            {
                continue;
            }

            string name = lump.Site.Name + (lump.Tag is null ? "" : $" @{lump.Tag.Name}");
            (string, string?) key = (lump.Site.Name, lump.Tag?.Name);
            if (first.TryAdd(key, (line, entry.Head.Date)))
            {
                yield return RuleContext.At(Name, FindingLevel.Watch, line, lump.Site.Span,
                    $"Lump {name}, noted here for the first time. Worth watching and measuring again; published advice is to have any lump of 1 cm or more that is there for a month sampled by a vet.",
                    "Ettinger, WSAVA Congress Proceedings 2017");
            }
            else
            {
                (int earlier, DateOnly? day) = first[key];
                yield return RuleContext.At(Name, FindingLevel.Info, line, lump.Site.Span,
                    $"Lump {name}, first noted {(day is { } date ? date.ToString("yyyy-MM-dd") : "earlier")} (line {earlier + 1}).", "the notes themselves", earlier);
            }
        }
    }
}
