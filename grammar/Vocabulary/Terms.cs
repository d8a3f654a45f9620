using System.Collections.Immutable;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>A word of the vocabulary with its other spellings. Every table's row is one.</summary>
public interface ITerm
{
    /// <summary>The one spelling that <c>format</c> writes.</summary>
    string Word { get; }

    /// <summary>Other spellings that are understood; they may contain blanks.</summary>
    IReadOnlyList<string> Synonyms { get; }
}

/// <summary>Animals the notes are for.</summary>
public enum Species
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>A dog.</summary>
    Dog,

    /// <summary>A cat.</summary>
    Cat,
}

/// <summary>What kind of line a word starts.</summary>
public enum WordKind
{
    /// <summary>A fact about the pet.</summary>
    Fact,

    /// <summary>A measured value.</summary>
    Vital,

    /// <summary>A part looked at and felt.</summary>
    Exam,

    /// <summary>Something found on the body: a lump, a wound, a sore place.</summary>
    Scan,

    /// <summary>Home care: doses, meals, water, stool and the like.</summary>
    Care,

    /// <summary>An act with its validity: a vaccine, a parasite treatment.</summary>
    Act,

    /// <summary>Something to ask or to do.</summary>
    Task,

    /// <summary>A picture.</summary>
    Picture,

    /// <summary>Something not examined, with the reason.</summary>
    Skip,

    /// <summary><c>else ok</c>: all that was looked at and not named.</summary>
    Rest,
}

/// <summary>How worrying a word or a reading is. Ordered: a later level is stronger.</summary>
public enum Level
{
    /// <summary>As expected.</summary>
    Expected,

    /// <summary>Worth watching.</summary>
    Watch,

    /// <summary>A reason to phone the clinic.</summary>
    Call,

    /// <summary>Cannot wait.</summary>
    Urgent,
}

/// <summary>A word a line starts with.</summary>
/// <param name="Word">The one spelling.</param>
/// <param name="Kind">What kind of line it starts.</param>
/// <param name="Synonyms">Other spellings.</param>
/// <param name="Species">The animals it is for.</param>
/// <param name="Order">Its place in the head-to-tail list.</param>
/// <param name="Takes">The slots the line may hold (see <see cref="Slot"/>).</param>
/// <param name="Definition">What it is, in plain words.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Name">What an owner calls it in a sentence.</param>
/// <param name="Scales">What a score may be out of, the usual scale first; empty where it has no scale.</param>
public sealed record LineWord(
    string Word, WordKind Kind, IReadOnlyList<string> Synonyms, string Species, int Order, IReadOnlyList<Slot> Takes, string Definition, string Source, string Name,
    ImmutableArray<int> Scales) : ITerm
{
    /// <summary>Its place among the rows of its table, from 0.</summary>
    public int Index { get; init; }

    private readonly ulong holds = Takes.Aggregate(0UL, (mask, slot) => mask | (1UL << (int)slot.Kind));

    /// <summary>The slots that the line makes no sense without.</summary>
    public ImmutableArray<SlotKind> Needed { get; } = [.. Takes.Where(slot => slot.Needed).Select(slot => slot.Kind)];

    /// <summary>True when the word may hold <paramref name="kind"/>.</summary>
    public bool Has(SlotKind kind) => (holds & (1UL << (int)kind)) != 0;
}

/// <summary>A place in a line for one kind of value; <paramref name="Needed"/> when the line makes no sense without it.</summary>
public sealed record Slot(SlotKind Kind, bool Needed);

/// <summary>A word that describes what was seen at <paramref name="Part"/> (a line word, or <c>any</c>), with a level by species.</summary>
public sealed record DescribingWord(string Word, string Part, IReadOnlyList<string> Synonyms, IReadOnlyList<Meaning> Meanings) : ITerm
{
    /// <summary>True for a word that says how much: negating it does not negate the sign behind it.</summary>
    public bool IsDegree => Part == "any" && Word is "slight" or "mild" or "moderate" or "severe" or "marked" or "constant" or "sudden" or "on-off";

    /// <summary>What the word means in this animal: the most specific row, or null when the word is not used for it.</summary>
    /// <param name="species">The animal; <see cref="Species.Unknown"/> gets the row for both, or the mildest row there is.</param>
    /// <param name="male">True for a male.</param>
    public Meaning? For(Species species, bool male)
    {
        Meaning? best = null;
        foreach (Meaning meaning in Meanings)
        {
            int rank = meaning.Rank(species, male);
            if (rank > 0 && (best is null || rank > best.Rank(species, male)))
            {
                best = meaning;
            }
        }

        return best ?? (species == Species.Unknown ? Meanings.MinBy(m => m.Level) : null);
    }
}

/// <summary>One row of a describing word: in <paramref name="Animal"/> (<c>both</c>, <c>dog</c>, <c>cat</c>, <c>male-cat</c>) it has this level.</summary>
public sealed record Meaning(string Animal, Level Level, string Definition, string Source)
{
    /// <summary>True for an expected word whose absence says nothing: an ear that is not cold.</summary>
    public bool IsNeutral { get; init; }

    /// <summary>What its level rests on: a source that says no more than what the word means does not say how worrying it is.</summary>
    public string LevelSource => Source.EndsWith("(the meaning; the level is a rule of thumb)", StringComparison.Ordinal) ? "common practice, no source" : Source;

    internal int Rank(Species species, bool male) => (Animal, species) switch
    {
        ("male-cat", Species.Cat) when male => 3,
        ("male-dog", Species.Dog) when male => 3,
        ("dog", Species.Dog) or ("cat", Species.Cat) => 2,
        ("both", _) => 1,
        _ => 0,
    };
}

/// <summary>A region of the body. <paramref name="X"/> runs from nose (0) to tail tip (100), <paramref name="Y"/> from back (0) to ground (100), on the view named by <paramref name="Surface"/>.</summary>
public sealed record Region(string Word, IReadOnlyList<string> Synonyms, string Species, SideRule Sides, IReadOnlyList<string> Roles, string Surface, int X, int Y, string Definition, string Source) : ITerm;

/// <summary>Which sides a region has.</summary>
public enum SideRule
{
    /// <summary>One on the left and one on the right.</summary>
    Pair,

    /// <summary>On the midline: no side is possible.</summary>
    Mid,

    /// <summary>Broad: left, right, middle or no side.</summary>
    Any,

    /// <summary>One on each of the four limbs.</summary>
    Four,

    /// <summary>One on each front limb.</summary>
    Front,

    /// <summary>One on each hind limb.</summary>
    Hind,
}

/// <summary>
/// A unit of measure: canonical value = (written + <paramref name="Offset"/>) × <paramref name="Factor"/> / <paramref name="Divisor"/>,
/// in <paramref name="Canonical"/>. The divisor keeps fractions such as 5/9 exact. A number without a unit between
/// <paramref name="BareFrom"/> and <paramref name="BareTo"/> can mean this unit only.
/// </summary>
public sealed record Unit(string Word, IReadOnlyList<string> Synonyms, Quantity Quantity, decimal Factor, decimal Divisor, decimal Offset, string Canonical, string Source, decimal? BareFrom = null, decimal? BareTo = null) : ITerm;

/// <summary>What a unit measures.</summary>
public enum Quantity
{
    /// <summary>Duration.</summary>
    Time,

    /// <summary>A count per minute.</summary>
    Rate,

    /// <summary>Temperature.</summary>
    Temperature,

    /// <summary>Mass.</summary>
    Mass,

    /// <summary>Length.</summary>
    Length,

    /// <summary>Volume.</summary>
    Volume,

    /// <summary>Concentration of glucose in blood.</summary>
    Glucose,

    /// <summary>Tablets, drops, units: counted doses.</summary>
    Dose,

    /// <summary>Mass of medicine per body weight.</summary>
    DoseRate,

    /// <summary>A part of a whole.</summary>
    Portion,

    /// <summary>Blood pressure.</summary>
    Pressure,
}

/// <summary>An everyday object a lump is compared with; diameters in millimetres.</summary>
public sealed record ComparisonObject(string Word, IReadOnlyList<string> Synonyms, decimal LowMm, decimal HighMm, decimal TypicalMm, string Definition, string Source) : ITerm;

/// <summary>A trade abbreviation and the plain words it stands for, in one place of a line.</summary>
public sealed record Abbreviation(string Word, string StandsFor, string Where, string Definition, string Source) : ITerm
{
    /// <summary>Abbreviations have no further spellings.</summary>
    public IReadOnlyList<string> Synonyms => [];
}

/// <summary>A state, a place of taking, a route or a manner; <paramref name="For"/> lists the line words it goes with.</summary>
public sealed record StateWord(string Word, IReadOnlyList<string> Synonyms, StateKind Kind, IReadOnlyList<string> For, string Comparable, string Definition, string Source) : ITerm
{
    /// <summary>True for eyes and ears: two doses at once may be one for each.</summary>
    public bool IsPair => Comparable == "pair";
}

/// <summary>What a state word says.</summary>
public enum StateKind
{
    /// <summary>How the animal was: asleep, at rest.</summary>
    State,

    /// <summary>Where a vital was taken.</summary>
    Place,

    /// <summary>How a medicine goes in.</summary>
    Route,

    /// <summary>With food or without.</summary>
    Food,

    /// <summary>Only when needed.</summary>
    When,
}

/// <summary>A word of a small closed list: species, sex, side, part of a meal.</summary>
public sealed record FixedWord(string Word, IReadOnlyList<string> Synonyms, string Kind, string Definition) : ITerm;

/// <summary>The tooth numbers of one species and one set, modified Triadan system.</summary>
public sealed record ToothSet(Species Species, string Set, IReadOnlySet<int> Numbers, string Source);

/// <summary>A phrase that stands for a line, or for several: <c>limping</c> for <c>gait lame</c>.</summary>
/// <param name="Word">The phrase.</param>
/// <param name="Synonyms">Other phrases for the same.</param>
/// <param name="Lines">The words of the lines it stands for, each with what it implies.</param>
/// <param name="Means">Whether the phrase names the line, says that something was seen, or that it did not happen.</param>
/// <param name="Definition">What it means, in plain words.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record LeadWord(string Word, IReadOnlyList<string> Synonyms, ImmutableArray<LeadLine> Lines, LeadMeans Means, string Definition, string Source) : ITerm;

/// <summary>A line's word and the words that a phrase implies behind it.</summary>
public sealed record LeadLine(string Word, ImmutableArray<string> Words);

/// <summary>What a phrase that stands for a line says.</summary>
public enum LeadMeans
{
    /// <summary>It names the line, as an abbreviation does; values follow.</summary>
    Plain,

    /// <summary>It was seen.</summary>
    Sign,

    /// <summary>It did not happen.</summary>
    None,
}

/// <summary>A word that negates, ends or joins what stands beside it.</summary>
public sealed record ModifierWord(string Word, IReadOnlyList<string> Synonyms, ModifierKind Kind, string Definition, string Source) : ITerm
{
    /// <summary>True for <c>no</c> and its like, behind which a list of nouns may all be negated; not for <c>not</c>.</summary>
    public bool NegatesLists => Kind == ModifierKind.Absent && !(Word.StartsWith("not", StringComparison.Ordinal) || Word.EndsWith("not", StringComparison.Ordinal) || Word.EndsWith("nt", StringComparison.Ordinal) || Word.EndsWith("n't", StringComparison.Ordinal));
}

/// <summary>What a small word does.</summary>
public enum ModifierKind
{
    /// <summary>Stands before a sign that is not there.</summary>
    Absent,

    /// <summary>Stands behind a sign that is not there.</summary>
    AbsentAfter,

    /// <summary>Stands before a sign that is there no longer.</summary>
    Ended,

    /// <summary>Stands behind a sign that is there no longer.</summary>
    EndedAfter,

    /// <summary>Carries no meaning of its own.</summary>
    Filler,

    /// <summary>Joins two words so that what negates one negates both.</summary>
    JoinsOr,

    /// <summary>Joins two words.</summary>
    JoinsAnd,

    /// <summary>Starts words that tell when or why, up to the next comma.</summary>
    Aside,
}

/// <summary>A generic name of a medicine, or a kind of medicine that people write for one.</summary>
public sealed record MedicineName(string Word, IReadOnlyList<string> Synonyms, string Group, string Source) : ITerm;
