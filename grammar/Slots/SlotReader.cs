using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>
/// A row of the table of slots: what fits, how it is read, what to tell someone who left it out, its units and spellings.
/// Reader, messages, fixes and completion all ask the same row. A slot has no state.
/// </summary>
internal abstract class SlotReader(SlotKind kind)
{
    public SlotKind Kind => kind;

    /// <summary>What to write here, with an example; empty where there is nothing to say.</summary>
    public virtual string Hint(LineWord word) => "";

    /// <summary>The units a bare number may lack, the likeliest first: the metric one, then the US one.</summary>
    public virtual ImmutableArray<string> Units(LineWord word) => [];

    /// <summary>Every spelling that this slot understands behind <paramref name="word"/>, numbers and free words apart.</summary>
    public virtual IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => [];

    /// <summary>True when a number with this unit goes into the slot.</summary>
    public virtual bool Fits(Unit unit, LineWord word) => false;

    /// <summary>True when the slot holds what the observation needs.</summary>
    public virtual bool IsFilled(Cursor at) => at.Holds(kind);

    /// <summary>Takes words at the cursor; false, with the cursor where it was, when they are not of this slot.</summary>
    public virtual bool BindWord(Cursor at) => false;

    /// <summary>Takes a number by its form before values are looked for (a date, a tooth); false when it is not of this slot.</summary>
    public virtual bool BindNumber(Cursor at, Scanning.NumberPart part) => false;

    /// <summary>The value that a number of this form is here; null when it is none.</summary>
    public virtual object? Value(Cursor at, NumberForm form) => null;
}
