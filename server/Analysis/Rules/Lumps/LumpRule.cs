using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lump: watch when it is first noted, something to know when it was noted before or a vet knows of it. Growth is another rule's matter.</summary>
public sealed class LumpRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump", "seen", 6);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            if (item is not Finding { Word.Word: "lump" } lump || MammaryLumpRule.IsMammary(lump))
            {
                continue;
            }

            string name = lump.Site.Name + (lump.Tag is null ? "" : $" @{lump.Tag.Name}");
            string? end = LumpWords.End(lump);
            if (at.First(CourseKey.Of(lump)) is { } first && first.Line != line)
            {
                string then = first.Reading is { } size ? $": {size.Written} then" : "";
                yield return this.At(FindingLevel.Info, line, lump.Site.Span,
                    $"Lump {name}, first noted {first.Day:yyyy-MM-dd} (line {first.Line + 1}){then}{(end is null ? "" : $"; written as `{end}`")}.", "the notes themselves", first.Line);
            }
            else if (end is not null)
            {
                yield return this.At(FindingLevel.Info, line, lump.Site.Span, $"Lump {name}, written as `{end}` and not written down before.", "the notes themselves");
            }
            else if (SeenBy(at, entry, lump) is { } seen)
            {
                yield return this.At(FindingLevel.Info, line, lump.Site.Span, $"Lump {name}, noted here for the first time. {seen.How}", "the notes themselves", seen.Line is { } other ? [other] : []);
            }
            else
            {
                yield return this.At(FindingLevel.Watch, line, lump.Site.Span,
                    $"Lump {name}, noted here for the first time. Worth watching and measuring again; published advice is to have any lump of 1 cm or more that is there for a month sampled by a vet.",
                    LumpNumbers.Default.SourceOf("sample-mm")).WithoutAdvice();
            }
        }
    }

    /// <summary>How a vet knows of it already; null when the entry and the facts say nothing of that.</summary>
    private static (string How, int? Line)? SeenBy(PetRecord at, PetEntry entry, Finding lump) =>
        LumpWords.Has(lump, "sampled") ? ("It is written as sampled.", null)
        : LumpWords.Has(lump, "vet-knows") ? ("The vet knows of it.", null)
        : entry.Entry.Head.Kind == "visit" ? ("Noted at the visit.", null)
        : KnownFinding.For(at.Facts, lump, entry.Entry.Head.Date ?? DateOnly.MinValue) is { } known ? (KnownFinding.Say(known), known.Line)
        : null;
}
