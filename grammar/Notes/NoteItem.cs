using System.Collections.Immutable;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>One line's meaning. All spans count from the start of its line.</summary>
/// <param name="Head">The word the line starts with, where it stands, and the time before it.</param>
public abstract record NoteItem(ItemHead Head)
{
    /// <summary>The word the line starts with.</summary>
    public LineWord Word => Head.Word;
}

/// <summary>What every line has: its word, the word's place, and the time of day when one was written.</summary>
public sealed record ItemHead(LineWord Word, TextSpan Span, TimeOnly? Time);

/// <summary>Words that describe what was seen, each with its place.</summary>
public sealed record Described(DescribingWord Word, TextSpan Span);

/// <summary>A name that tells two findings in one place apart, without its <c>@</c>.</summary>
public sealed record FindingTag(TextSpan Span, string Name);

/// <summary>Free words to the end of a line.</summary>
public sealed record FreeWords(TextSpan Span, string Text);

/// <summary>A fact in free words: breed, known, allergy, vet, owner, phone, chip.</summary>
public sealed record TextFact(ItemHead Head, FreeWords Text) : NoteItem(Head);

/// <summary>The species.</summary>
public sealed record SpeciesFact(ItemHead Head, TextSpan Span, Species Species) : NoteItem(Head);

/// <summary>Sex, and whether neutered; null where not said.</summary>
public sealed record SexFact(ItemHead Head, bool? Male, bool? Neutered) : NoteItem(Head);

/// <summary>The date of birth.</summary>
public sealed record BornFact(ItemHead Head, PartialDate Date) : NoteItem(Head);

/// <summary>The weight when grown.</summary>
public sealed record AdultWeightFact(ItemHead Head, NoteValue Weight) : NoteItem(Head);

/// <summary>The units to show.</summary>
public sealed record UnitsFact(ItemHead Head, FixedWord Units) : NoteItem(Head);

/// <summary>This pet's own usual range of a vital, as its vet sees it.</summary>
public sealed record UsualFact(ItemHead Head, LineWord Vital, ValueRange Range, StateWord? State, StateWord? Place, Attribution? Per) : NoteItem(Head);

/// <summary>A line the clinic drew for a vital.</summary>
public sealed record CallIfFact(ItemHead Head, LineWord Vital, Limit Limit, StateWord? State, StateWord? Place, Attribution? Per) : NoteItem(Head);

/// <summary>Who said so, and when.</summary>
public sealed record Attribution(TextSpan Span, string Who, PartialDate? When);

/// <summary>A medicine's plan.</summary>
public sealed record MedicinePlan(ItemHead Head, FreeWords Medicine, NoteValue? Dose, Schedule Schedule, ImmutableArray<StateWord> Manner, FreeWords? Note) : NoteItem(Head);

/// <summary>How often the pet is checked at home.</summary>
public sealed record HomeCheckFact(ItemHead Head, Schedule Schedule) : NoteItem(Head);

/// <summary>
/// A finding that is accepted until a day: <c>accept lump-sample lump L-flank until 2027-03-01 sampled, a fatty lump</c>.
/// </summary>
/// <param name="Head">The line's word.</param>
/// <param name="Rule">The name of the finding as written in small letters; whether it exists is not known here.</param>
/// <param name="Item">The part it is limited to, or null.</param>
/// <param name="Site">The place it is limited to, or null.</param>
/// <param name="Tag">The tag it is limited to, or null.</param>
/// <param name="Until">The last day it holds.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record AcceptFact(ItemHead Head, FreeWords Rule, LineWord? Item, Site? Site, FindingTag? Tag, PartialDate Until, FreeWords? Reason) : NoteItem(Head);

/// <summary>A vital: a value, and how it was taken; <paramref name="Ok"/> when it was as expected in so many words.</summary>
public sealed record Reading(ItemHead Head, NoteValue Value, StateWord? State, StateWord? Place, Site? Site, ImmutableArray<Described> Words, bool Ok = false) : NoteItem(Head);

/// <summary>A part looked at and felt; <paramref name="Ok"/> when it was as expected in so many words.</summary>
public sealed record Examined(ItemHead Head, Site? Site, FindingTag? Tag, NoteValue? Size, ImmutableArray<Described> Words, bool Ok) : NoteItem(Head);

/// <summary>Something found on the body: a lump, a wound, a sore place.</summary>
public sealed record Finding(ItemHead Head, Site Site, FindingTag? Tag, NoteValue? Size, ImmutableArray<Described> Words, bool Ok = false) : NoteItem(Head);

/// <summary>A medicine given, missed or stopped, by the line's word.</summary>
public sealed record DoseEvent(ItemHead Head, FreeWords Medicine, NoteValue? Dose, ImmutableArray<StateWord> Manner, FreeWords? Note) : NoteItem(Head);

/// <summary>Home care: a meal, water, stool and the like; <paramref name="TimesBound"/> says how exactly the times are known.</summary>
public sealed record CareEvent(ItemHead Head, NoteValue? Quantity, int? Times, Amount? Duration, Amount? Distance, FreeWords? Food, ImmutableArray<Described> Words, FreeWords? Note, Bound TimesBound = Bound.Exact, bool Ok = false) : NoteItem(Head);

/// <summary>A question for the vet, or something done.</summary>
public sealed record TextTask(ItemHead Head, FreeWords Text) : NoteItem(Head);

/// <summary>Something to look at again.</summary>
public sealed record Recheck(ItemHead Head, LineWord Item, Site? Site, Schedule Schedule, FindingTag? Tag = null) : NoteItem(Head);

/// <summary>Something that falls due.</summary>
public sealed record DueTask(ItemHead Head, FreeWords Topic, Schedule Schedule) : NoteItem(Head);

/// <summary>A picture beside the file.</summary>
public sealed record Photo(ItemHead Head, FreeWords File, FreeWords? Caption) : NoteItem(Head);

/// <summary>Something not examined.</summary>
public sealed record Skipped(ItemHead Head, LineWord Item, Site? Site, FreeWords? Reason, FindingTag? Tag = null) : NoteItem(Head);

/// <summary>All that was looked at and not named was as expected.</summary>
public sealed record RestOk(ItemHead Head) : NoteItem(Head);
