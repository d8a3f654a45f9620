using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lump: watch when it is first noted, something to know when it was noted before or a vet knows of it. Growth is another rule's matter.</summary>
public sealed class LumpRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "lump";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        foreach ((int line, NoteItem item) in at.Entry.Items)
        {
            if (item is not Finding { Word.Word: "lump" } lump || MammaryLumpRule.IsMammary(lump))
            {
                continue;
            }

            string name = lump.Site.Name + (lump.Tag is null ? "" : $" @{lump.Tag.Name}");
            string? end = LumpWords.End(lump);
            if (at.Earlier.FirstLump(lump.Site.Name, lump.Tag?.Name) is { } first && first.Line != line)
            {
                string then = first.Size is { } size ? $": {size} then" : "";
                yield return RuleContext.At(Name, FindingLevel.Info, line, lump.Site.Span,
                    $"Lump {name}, first noted {(first.Day is { } date ? date.ToString("yyyy-MM-dd") : "earlier")} (line {first.Line + 1}){then}{(end is null ? "" : $"; written as `{end}`")}.", "the notes themselves", first.Line);
            }
            else if (end is not null)
            {
                yield return RuleContext.At(Name, FindingLevel.Info, line, lump.Site.Span, $"Lump {name}, written as `{end}` and not noted before.", "the notes themselves");
            }
            else if (SeenBy(at, lump) is { } seen)
            {
                yield return RuleContext.At(Name, FindingLevel.Info, line, lump.Site.Span, $"Lump {name}, noted here for the first time. {seen.How}", "the notes themselves", seen.Line is { } other ? [other] : []);
            }
            else
            {
                yield return RuleContext.At(Name, FindingLevel.Watch, line, lump.Site.Span,
                    $"Lump {name}, noted here for the first time. Worth watching and measuring again; published advice is to have any lump of 1 cm or more that is there for a month sampled by a vet.",
                    LumpNumbers.Default.SourceOf("sample-mm"));
            }
        }
    }

    /// <summary>How a vet knows of it already; null when the entry and the facts say nothing of that.</summary>
    private static (string How, int? Line)? SeenBy(EntryContext at, Finding lump) =>
        LumpWords.Has(lump, "sampled") ? ("It is written as sampled.", null)
        : LumpWords.Has(lump, "vet-knows") ? ("The vet knows of it.", null)
        : at.Entry.Head.Kind == "visit" ? ("Noted at the visit.", null)
        : KnownFinding.For(at.Note, lump, at.Entry.Head.Date ?? DateOnly.MinValue) is { } known ? (KnownFinding.Say(known), known.Line)
        : null;
}
