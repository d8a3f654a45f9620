using System.Collections.Immutable;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Items;

/// <summary>One observation, event, fact or task. All spans count from the start of its line.</summary>
/// <param name="Head">The word it is filed under, where that stands, and the time of day.</param>
/// <param name="Body">What stands behind the word.</param>
public abstract record NoteItem(ItemHead Head, ItemBody Body)
{
    /// <summary>The word it is filed under.</summary>
    public LineWord Word => Head.Word;

    /// <summary>Where on the body, or null.</summary>
    public Site? Site => Body.Get<Site>(SlotKind.Site);

    /// <summary>The name that tells two findings in one place apart, or null.</summary>
    public FindingTag? Tag => Body.Get<FindingTag>(SlotKind.Tag);

    /// <summary>The value, size, amount or part of a meal, or null.</summary>
    public NoteValue? Value => Body.First<NoteValue>(except: SlotKind.Reference);

    /// <summary>The signs that are there; never one that is negated or over.</summary>
    public ImmutableArray<Described> Words => Body.Words;

    /// <summary>The signs that are not there, or are there no longer.</summary>
    public ImmutableArray<Described> Absent => Body.Absent;

    /// <summary>True when it was as expected in so many words.</summary>
    public bool Ok => Body.Get<FixedWord>(SlotKind.Ok) is not null;

    /// <summary>The item that this one is about: the vital of <c>usual</c>, the part of <c>skip</c>; or null.</summary>
    public LineWord? About => Body.First<LineWord>();

    /// <summary>Its free words: a medicine, a food, a topic, a fact's text; or null.</summary>
    public FreeWords? Name => Body.First<FreeWords>(except: SlotKind.Note);

    /// <summary>Since when it is so, where the line tells of days before its entry; or null.</summary>
    public SinceDay? Since => Body.First<SinceDay>();

    /// <summary>The remark: words that are kept as written, or null.</summary>
    public FreeWords? Note => Body.Get<FreeWords>(SlotKind.Note);

    /// <summary>Its times; <see cref="Schedule.None"/> when none are written.</summary>
    public Schedule Schedule => Body.First<Schedule>() ?? Schedule.None;

    /// <summary>How the animal was, or null.</summary>
    public StateWord? State => Body.Get<StateWord>(SlotKind.State);

    /// <summary>Where on the body a vital was taken, or null.</summary>
    public StateWord? Place => Body.Get<StateWord>(SlotKind.Place);

    /// <summary>Route, food, when: in this order, whatever order they were written in.</summary>
    public ImmutableArray<StateWord> Manner => [.. Body.All<StateWord>(SlotKind.Route).OrderBy(word => word.Kind)];
}

/// <summary>What every item has: its word, where that stands, and the time of day when one was written.</summary>
/// <param name="Word">The word.</param>
/// <param name="Span">Where the word, or the phrase that led to it, stands.</param>
/// <param name="Time">The time of day, or null.</param>
/// <param name="Lead">How the word was found: null when it was written itself.</param>
public sealed record ItemHead(LineWord Word, TextSpan Span, TimeOnly? Time, LeadWord? Lead = null);

/// <summary>Whether a sign is there.</summary>
public enum Sense
{
    /// <summary>It is there.</summary>
    Present,

    /// <summary>Looked for, and not there: <c>no blood</c>, <c>not red</c>.</summary>
    Absent,

    /// <summary>It was there and is no longer: <c>swelling gone</c>.</summary>
    Ended,
}

/// <summary>A word that describes what was seen.</summary>
/// <param name="Word">Its row in the vocabulary.</param>
/// <param name="Span">Where it stands, with what negates it.</param>
/// <param name="Text">The owner's own form of it, which formatting keeps.</param>
/// <param name="Sense">Whether the sign is there.</param>
public sealed record Described(DescribingWord Word, TextSpan Span, string Text, Sense Sense = Sense.Present);

/// <summary>A name that tells two findings in one place apart, without its <c>@</c>.</summary>
public sealed record FindingTag(TextSpan Span, string Name);

/// <summary>Free words.</summary>
public sealed record FreeWords(TextSpan Span, string Text);

/// <summary>How often something happened, and how exactly that is known.</summary>
public sealed record EventCount(int Number, Bound Bound);

/// <summary>How long or how far, as an item of its own: <c>walk 30min 2km</c>.</summary>
public sealed record Extent(Amount Amount);

/// <summary>Sex, and whether neutered; null where not said.</summary>
public sealed record SexWords(bool? Male, bool? Neutered);

/// <summary>The species, as written.</summary>
public sealed record SpeciesWord(TextSpan Span, Species Species);

/// <summary>Who said so, and when.</summary>
public sealed record Attribution(TextSpan Span, string Who, PartialDate? When);

/// <summary>A fact in free words: breed, known, allergy, vet, owner, phone, chip.</summary>
public sealed record TextFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The words.</summary>
    public FreeWords Text => Name!;
}

/// <summary>The species.</summary>
public sealed record SpeciesFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The species.</summary>
    public Species Species => Body.First<SpeciesWord>()!.Species;

    /// <summary>Where it stands.</summary>
    public TextSpan Span => Body.First<SpeciesWord>()!.Span;
}

/// <summary>Sex, and whether neutered.</summary>
public sealed record SexFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>True for a male; null where not said.</summary>
    public bool? Male => Body.First<SexWords>()!.Male;

    /// <summary>True for a neutered animal; null where not said.</summary>
    public bool? Neutered => Body.First<SexWords>()!.Neutered;
}

/// <summary>The date of birth.</summary>
public sealed record BornFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The date.</summary>
    public PartialDate Date => Body.First<PartialDate>()!;
}

/// <summary>The weight when grown.</summary>
public sealed record AdultWeightFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The weight.</summary>
    public NoteValue Weight => Value!;
}

/// <summary>The units to show.</summary>
public sealed record UnitsFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>Metric or US.</summary>
    public FixedWord Units => Body.First<FixedWord>()!;
}

/// <summary>This pet's own usual range of a vital, as its vet sees it.</summary>
public sealed record UsualFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The vital.</summary>
    public LineWord Vital => About!;

    /// <summary>The range.</summary>
    public ValueRange Range => (ValueRange)Value!;

    /// <summary>Who said so, or null.</summary>
    public Attribution? Per => Body.First<Attribution>();
}

/// <summary>A limit the clinic set for a vital: past it, phone, or phone now.</summary>
public sealed record CallIfFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    internal const string Now = "phone-now-if";

    /// <summary>True where a value past it cannot wait.</summary>
    public bool IsNow => Word.Word == Now;

    /// <summary>The vital.</summary>
    public LineWord Vital => About!;

    /// <summary>The limit.</summary>
    public Limit Limit => (Limit)Value!;

    /// <summary>Who said so, or null.</summary>
    public Attribution? Per => Body.First<Attribution>();
}

/// <summary>The single doses of a medicine that the clinic orders.</summary>
public sealed record MedicineRangeFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The medicine.</summary>
    public FreeWords Medicine => Name!;

    /// <summary>The smallest and the largest dose; the unit is always written.</summary>
    public ValueRange Range => (ValueRange)Value!;

    /// <summary>Who said so, or null.</summary>
    public Attribution? Per => Body.First<Attribution>();
}

/// <summary>What one tablet of a medicine holds.</summary>
public sealed record MedicineStrengthFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The medicine.</summary>
    public FreeWords Medicine => Name!;
}

/// <summary>An urgent finding that the clinic's rules lower: <c>override urgent temp-range per Dr Vet 2026-01-20 because ...</c>.</summary>
public sealed record OverrideFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The name of the finding as written, in small letters.</summary>
    public FreeWords Rule => Name!;

    /// <summary>Who said so, or null.</summary>
    public Attribution? Per => Body.First<Attribution>();
}

/// <summary>A medicine's plan. One that could not be worked out holds its words in <see cref="NoteItem.Note"/> alone.</summary>
public sealed record MedicinePlan(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The medicine.</summary>
    public FreeWords Medicine => Name!;

    /// <summary>The amount for one time, or null.</summary>
    public NoteValue? Dose => Value;
}

/// <summary>How often the pet is checked at home.</summary>
public sealed record HomeCheckFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body);

/// <summary>
/// A finding that is accepted until a day: <c>accept lump-sample lump L-flank until 2027-03-01 sampled, a fatty lump</c>.
/// Whether a rule of that name exists is not known here.
/// </summary>
public sealed record AcceptFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The name of the finding as written, in small letters.</summary>
    public FreeWords Rule => Name!;

    /// <summary>The part it is limited to, or null.</summary>
    public LineWord? Item => About;

    /// <summary>The last day it holds.</summary>
    public PartialDate Until => Schedule.Until!;

    /// <summary>Why, or null.</summary>
    public FreeWords? Reason => Note;
}

/// <summary>
/// What the clinic said will be seen for some days: <c>expect wound swollen, red until 2026-10-09 per vet</c>. Without signs
/// it is about everything that is written of the part.
/// </summary>
public sealed record ExpectFact(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The part, or what is written of it.</summary>
    public LineWord Item => About!;

    /// <summary>The last day it holds.</summary>
    public PartialDate Until => Schedule.Until!;

    /// <summary>Who said so, or null.</summary>
    public Attribution? Per => Body.First<Attribution>();
}

/// <summary>A vital: a value, and how it was taken.</summary>
public sealed record Reading(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The value.</summary>
    public new NoteValue Value => base.Value!;
}

/// <summary>A part looked at and felt.</summary>
public sealed record Examined(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>Its size, or null.</summary>
    public NoteValue? Size => Value;
}

/// <summary>Something found on the body: a lump, a wound, a sore place.</summary>
public sealed record Finding(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>Where.</summary>
    public new Site Site => base.Site!;

    /// <summary>Its size, or null.</summary>
    public NoteValue? Size => Value;
}

/// <summary>A medicine given, missed or stopped, by the item's word.</summary>
public sealed record DoseEvent(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The medicine.</summary>
    public FreeWords Medicine => Name!;

    /// <summary>The amount, or null.</summary>
    public NoteValue? Dose => Value;
}

/// <summary>Home care: a meal, water, stool and the like.</summary>
public sealed record CareEvent(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>How much, or null.</summary>
    public NoteValue? Quantity => Value;

    /// <summary>The food, or null.</summary>
    public FreeWords? Food => Name;

    /// <summary>How often, or null when not said; 0 when it was said not to have happened.</summary>
    public int? Times => Body.First<EventCount>()?.Number;

    /// <summary>How exactly the times are known.</summary>
    public Bound TimesBound => Body.First<EventCount>()?.Bound ?? Bound.Exact;

    /// <summary>How long, or null.</summary>
    public Amount? Duration => Body.Get<Extent>(SlotKind.Duration)?.Amount;

    /// <summary>How far, or null.</summary>
    public Amount? Distance => Body.Get<Extent>(SlotKind.Distance)?.Amount;
}

/// <summary>A laboratory value; <see cref="NoteItem.Name"/> is what was measured.</summary>
public sealed record LabResult(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The laboratory's own range, or null.</summary>
    public ValueRange? Reference => Body.Get<ValueRange>(SlotKind.Reference);
}

/// <summary>An act with its validity: a vaccine, a parasite treatment. <see cref="NoteItem.Schedule"/> says when, and for how long it holds.</summary>
public sealed record Act(ItemHead Head, ItemBody Body) : NoteItem(Head, Body);

/// <summary>A question for the vet, or something done.</summary>
public sealed record TextTask(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The words.</summary>
    public FreeWords Text => Name!;
}

/// <summary>Something to look at again.</summary>
public sealed record Recheck(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>What to look at.</summary>
    public LineWord Item => About!;
}

/// <summary>Something that falls due.</summary>
public sealed record DueTask(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>What falls due.</summary>
    public FreeWords Topic => Name!;
}

/// <summary>A picture beside the file.</summary>
public sealed record Photo(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>The file's name.</summary>
    public FreeWords File => Name!;

    /// <summary>What it shows, or null.</summary>
    public FreeWords? Caption => Note;
}

/// <summary>Something not examined.</summary>
public sealed record Skipped(ItemHead Head, ItemBody Body) : NoteItem(Head, Body)
{
    /// <summary>What was not examined.</summary>
    public LineWord Item => About!;

    /// <summary>Why, or null.</summary>
    public FreeWords? Reason => Note;
}

/// <summary>All that was looked at and not named was as expected.</summary>
public sealed record RestOk(ItemHead Head, ItemBody Body) : NoteItem(Head, Body);

/// <summary>An event or a finding that was looked for and did not happen, or happens no longer: <c>no cough</c>, <c>seizure none</c>, <c>lump gone</c>.</summary>
public sealed record NotSeen(ItemHead Head, ItemBody Body) : NoteItem(Head, Body);
