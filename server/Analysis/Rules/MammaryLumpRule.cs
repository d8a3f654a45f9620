using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A lump in or at a mammary gland.</summary>
public sealed class MammaryLumpRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "mammary-lump";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <summary>True for a lump whose site is a mammary gland.</summary>
    public static bool IsMammary(Finding lump) => lump.Site.Region?.Word == "gland";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at) =>
        from placed in at.Entry.Items
        where placed.Value is Finding { Word.Word: "lump" } lump && IsMammary(lump)
        let lump = (Finding)placed.Value
        select RuleContext.At(Name, FindingLevel.Call, placed.Line, lump.Site.Span,
            $"A lump at a mammary gland ({lump.Site.Name}). A vet should feel any lump there without waiting to see whether it grows. {Wording.Advice(FindingLevel.Call)}",
            "common practice, no source");
}
