using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>
/// The one table of slots. Everything that asks what may stand behind a word, in which units and spellings, and what to say
/// when it is missing, asks here; the reader works from the same rows.
/// </summary>
public static class SlotTable
{
    // in the order in which words are tried
    private static readonly ImmutableArray<SlotReader> Rows =
    [
        .. ReferenceSlots.First, WordSlots.Portion, WordSlots.Phrases, .. FactSlots.All, WordSlots.Ok, .. ReferenceSlots.All, .. NameSlots.All,
        CountSlots.Times, ScheduleSlots.Schedule, ScheduleSlots.Validity, ScheduleSlots.Since, ScheduleSlots.Per, .. MeasureSlots.All, StateSlots.State, StateSlots.Place,
        StateSlots.Route, .. SiteSlots.All, WordSlots.Words, .. CountSlots.Others, TextSlots.Tag, .. TextSlots.All,
    ];

    private static readonly ImmutableArray<SlotReader> ByKind =
        [.. Enum.GetValues<SlotKind>().Select(kind => Rows.First(row => row.Kind == kind && row is not WordSlots.PhraseSlot))];

    private static readonly ImmutableArray<ImmutableArray<SlotReader>> ByWord = [.. NoteVocabulary.Default.LineWords.Terms
        .OrderBy(word => word.Index).Select(word => Rows.Where(row => Applies(row.Kind, word)).ToImmutableArray())];

    /// <summary>What to write in a slot of <paramref name="word"/>, with an example; empty where there is nothing to say.</summary>
    public static string Hint(SlotKind kind, LineWord word) => ByKind[(int)kind].Hint(word);

    /// <summary>The units a bare number may lack there, the likeliest first: the metric one, then the US one.</summary>
    public static ImmutableArray<string> Units(SlotKind kind, LineWord word) => ByKind[(int)kind].Units(word);

    /// <summary>True when a number with this unit goes into the slot.</summary>
    public static bool Fits(SlotKind kind, Unit unit, LineWord word) => ByKind[(int)kind].Fits(unit, word);

    /// <summary>Every spelling that is understood behind <paramref name="word"/>; numbers and free words apart.</summary>
    public static IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) =>
        Words(vocabulary, word).Concat(vocabulary.Units.Terms.Where(unit => word.Takes.Any(slot => ByKind[(int)slot.Kind].Fits(unit, word))).SelectMany(unit => unit.Synonyms.Prepend(unit.Word)));

    /// <summary>The same without units: a word in a sentence never stands for one.</summary>
    internal static IEnumerable<string> Words(NoteVocabulary vocabulary, LineWord word) => word.Takes.SelectMany(slot => ByKind[(int)slot.Kind].Spellings(vocabulary, word));

    /// <summary>The kind of place that a line with this word may hold; null where it holds none.</summary>
    public static SlotKind? SiteOf(LineWord word) => SiteSlots.KindOf(word);

    /// <summary>True when the region may stand in a slot of places.</summary>
    public static bool Fits(SlotKind kind, Region region) => SiteSlots.RoleOf(kind) is not { } role || region.Roles.Contains(role);

    /// <summary>The rows for a word, in the order in which they are tried.</summary>
    internal static ImmutableArray<SlotReader> For(LineWord word) => ByWord[word.Index];

    /// <summary>Where signs are taken, ok is too; where an amount of medicine is, so is the strength it follows from.</summary>
    private static bool Applies(SlotKind kind, LineWord word) => word.Has(kind)
        || (kind == SlotKind.Ok && word.Has(SlotKind.Words))
        || (kind == SlotKind.Tag && word.Has(SlotKind.AnySite))
        || (kind == SlotKind.Strength && word.Has(SlotKind.Medicine) && word.Has(SlotKind.Amount));

    internal static SlotReader Row(SlotKind kind) => ByKind[(int)kind];
}
