using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lump in or at a mammary gland: a reason to call until a vet has felt it, then something to know.</summary>
public sealed class MammaryLumpRule : ICourseRule, IEntryRule
{
    private const string Practice = "common practice, no source";

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("mammary-lump", "seen", 3);

    /// <summary>True for a lump whose site is a mammary gland.</summary>
    public static bool IsMammary(Finding lump) => lump.Site.Region?.Word == "gland";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "lump";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (course.Last?.Item is not Finding last || !IsMammary(last))
        {
            yield break;
        }

        foreach (LumpLife life in LumpLife.AllOf(course))
        {
            VetLook? seen = null;
            foreach (Noted noted in life.Lines)
            {
                seen = VetLook.Of(noted) ?? seen;
                if (LumpWords.End(noted.Item) is null && noted.Item is Finding lump)
                {
                    yield return seen is not null ? Seen(noted.Line, lump, seen.How + ".", seen.Noted.Line)
                        : KnownFinding.For(at.Facts, lump, noted.Day) is { } known ? Seen(noted.Line, lump, KnownFinding.Say(known), known.Line)
                        : Call(noted.Line, lump);
                }
            }
        }
    }

    /// <summary>Entries without a day, or after today, are in no course.</summary>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry) =>
        entry.Entry.Head.Date <= at.Facts.Today ? []
            : from placed in entry.Entry.Items
              where placed.Value is Finding { Word.Word: "lump" } lump && IsMammary(lump) && LumpWords.End(lump) is null
              select Call(placed.Line, (Finding)placed.Value);

    private NoteFinding Call(int line, Finding lump) => this.At(FindingLevel.Call, line, lump.Site.Span,
        $"A lump at a mammary gland ({lump.Site.Name}). A vet should feel any lump there without waiting to see whether it grows.",
        Practice);

    private NoteFinding Seen(int line, Finding lump, string how, int evidence) => this.At(FindingLevel.Info, line, lump.Site.Span,
        $"A lump at a mammary gland ({lump.Site.Name}). {how}", Practice, evidence);
}
