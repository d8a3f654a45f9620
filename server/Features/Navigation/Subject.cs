using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Navigation;

/// <summary>What a line is about, as far as other lines may be about the same.</summary>
internal abstract record Subject
{
    /// <summary>What a line is about; null for a line that nothing else goes back to.</summary>
    public static Subject? Of(NoteItem item) => MedicineIn(item) is { } medicine ? new MedicineSubject(medicine.Text) : BodyParts.Of(item) is { } parts ? BodySubject.Of(parts) : null;

    /// <summary>True when the line names this.</summary>
    public abstract bool IsNamedBy(NoteItem item);

    /// <summary>True when a line that names this also notes it, or plans it: its definition may be there.</summary>
    public abstract bool IsNotedBy(NoteItem item);

    /// <summary>The medicine that a line names.</summary>
    public static FreeWords? MedicineIn(NoteItem item) => item is MedicinePlan or DoseEvent ? item.Name : null;
}

/// <summary>A medicine, by its name in any case.</summary>
internal sealed record MedicineSubject(string Name) : Subject
{
    /// <inheritdoc/>
    public override bool IsNamedBy(NoteItem item) => MedicineIn(item) is { } medicine && medicine.Text.Equals(Name, StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override bool IsNotedBy(NoteItem item) => item is MedicinePlan;

    /// <inheritdoc/>
    public bool Equals(MedicineSubject? other) => other is not null && Name.Equals(other.Name, StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Name);
}

/// <summary>A lump, a wound, a part of the body: the same word, the same site, the same tag.</summary>
internal sealed record BodySubject(string Word, Side Side, string? Region, int? Number, string? Tag) : Subject
{
    /// <summary>The subject of the parts of a line.</summary>
    public static BodySubject Of(BodyParts parts) =>
        new(parts.Word.Word, parts.Site?.Side ?? Side.None, parts.Site?.Region?.Word, parts.Site?.Number, parts.Tag?.Name);

    /// <inheritdoc/>
    public override bool IsNamedBy(NoteItem item) =>
        BodyParts.Of(item) is { } parts
        && parts.Word.Word == Word
        && (parts.Site?.Side ?? Side.None) == Side
        && parts.Site?.Region?.Word == Region
        && parts.Site?.Number == Number
        && parts.Tag?.Name == Tag;

    /// <inheritdoc/>
    public override bool IsNotedBy(NoteItem item) => item is Finding or Examined;
}

/// <summary>What tells a finding or a part from others, in the lines that note it and in those that point at it.</summary>
internal readonly record struct BodyParts(LineWord Word, Site? Site, FindingTag? Tag)
{
    /// <summary>The parts that a line names; null for a line about something else. Values are measured afresh each time and are none.</summary>
    public static BodyParts? Of(NoteItem item) => item switch
    {
        Finding or Examined => new(item.Word, item.Site, item.Tag),
        Recheck or Skipped when item.About is { Kind: WordKind.Exam or WordKind.Scan } about => new(about, item.Site, item.Tag),
        _ => null,
    };
}
