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

/// <summary>A word a line starts with. <paramref name="Takes"/> lists the slots it may hold (see <see cref="Slot"/>).</summary>
public sealed record LineWord(string Word, WordKind Kind, IReadOnlyList<string> Synonyms, string Species, int Order, IReadOnlyList<Slot> Takes, string Definition, string Source) : ITerm
{
    private readonly ulong holds = Takes.Aggregate(0UL, (mask, slot) => mask | (1UL << (int)slot.Kind));

    /// <summary>True when the word may hold <paramref name="kind"/>.</summary>
    public bool Has(SlotKind kind) => (holds & (1UL << (int)kind)) != 0;
}

/// <summary>A place in a line for one kind of value; <paramref name="Needed"/> when the line makes no sense without it.</summary>
public sealed record Slot(SlotKind Kind, bool Needed);

/// <summary>A word that describes what was seen at <paramref name="Part"/> (a line word, or <c>any</c>), with a level by species.</summary>
public sealed record DescribingWord(string Word, string Part, IReadOnlyList<string> Synonyms, IReadOnlyList<Meaning> Meanings) : ITerm
{
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
/// in <paramref name="Canonical"/>. The divisor keeps fractions such as 5/9 exact.
/// </summary>
public sealed record Unit(string Word, IReadOnlyList<string> Synonyms, Quantity Quantity, decimal Factor, decimal Divisor, decimal Offset, string Canonical, string Source) : ITerm;

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
public sealed record StateWord(string Word, IReadOnlyList<string> Synonyms, StateKind Kind, IReadOnlyList<string> For, string Comparable, string Definition, string Source) : ITerm;

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
