namespace HealthNotes.Grammar.Vocabulary;

/// <summary>
/// Every word the notes know, read once from the tables in <c>Data</c>. The parser, <c>format</c>, messages, the page and
/// the language reference all read it; nothing here decides anything clinical beyond the level a word's row states.
/// </summary>
public sealed class NoteVocabulary
{
    /// <summary>The part whose rows say what a word means of a milk tooth; no line starts with it.</summary>
    private const string MilkTooth = "milk-tooth";

    private static readonly Lazy<NoteVocabulary> Shared = new(() => new NoteVocabulary());
    private Dictionary<string, Scope<DescribingWord>> describing;
    private readonly Dictionary<string, Scope<Abbreviation>> abbreviations;
    private Dictionary<string, Scope<StateWord>> states;
    private readonly Dictionary<string, Scope<FixedWord>> fixedWords;
    private FirstWords first = new();
    private Scope<DescribingWord>[] describingByIndex;
    private readonly Scope<Abbreviation>[] shortByIndex;
    private Lazy<HashSet<string>> describingSpellings;
    private readonly List<ToothSet> teeth = VocabularyTables.Teeth();

    private NoteVocabulary()
    {
        LineWords = first.Add(VocabularyTables.LineWords());
        Regions = first.Add(VocabularyTables.Regions());
        Units = first.Add(VocabularyTables.Units());
        Objects = first.Add(VocabularyTables.Objects());
        describing = DescribingByLineWord();
        ulong bit = first.NextBit();
        abbreviations = VocabularyTables.Abbreviations().GroupBy(a => a.Where)
            .ToDictionary(group => group.Key, group => first.Add(group, bit));
        List<StateWord> allStates = VocabularyTables.States();
        ulong stateBit = first.NextBit();
        states = allStates.SelectMany(s => s.For).Distinct()
            .ToDictionary(word => word, word => first.Add(allStates.Where(s => s.For.Contains(word)), stateBit));
        Leads = first.Add(VocabularyTables.Leads());
        Medicines = first.Add(VocabularyTables.Medicines());
        List<ModifierWord> modifiers = VocabularyTables.Modifiers();
        Before = first.Add(modifiers.Where(word => word.Kind is ModifierKind.Absent or ModifierKind.Ended));
        After = first.Add(modifiers.Where(word => word.Kind is ModifierKind.AbsentAfter or ModifierKind.EndedAfter));
        Small = first.Add(modifiers.Where(word => word.Kind is ModifierKind.Filler or ModifierKind.JoinsAnd or ModifierKind.JoinsOr));
        Asides = first.Add(modifiers.Where(word => word.Kind is ModifierKind.Aside));
        fixedWords = VocabularyTables.FixedWords().GroupBy(w => w.Kind)
            .ToDictionary(group => group.Key, group => first.Add(group));
        Everyday = fixedWords["everyday"];
        describingSpellings = SpellingsOf(describing);
        Sides = fixedWords["side"];
        Ok = fixedWords["ok"];
        Bounds = fixedWords["bound"];
        TimesWords = fixedWords["times"];
        NumberWords = fixedWords["number"];
        Limbs = fixedWords["limb"];
        Daily = fixedWords["daily"];
        DoseEvents = fixedWords["dose-event"];
        Portions = fixedWords["portion"];
        Exceptions = fixedWords["exception"];
        Twists = fixedWords["twist"];
        describingByIndex = ByIndex();
        shortByIndex = [.. LineWords.Terms.OrderBy(word => word.Index).Select(word => Abbreviations("word:" + word.Word))];
        AnyShort = Abbreviations("word:any");
        SideShort = Abbreviations("side");
        ScheduleShort = Abbreviations("schedule");
        RouteShort = Abbreviations("route");
    }

    /// <summary>
    /// The vocabulary with other spellings of words that it has: of the words of lines, phrases, signs, places and states. A spelling
    /// that it has keeps its meaning; a medicine is known by the name on its label.
    /// </summary>
    /// <param name="aliases">Each spelling with the word that it stands for.</param>
    public NoteVocabulary With(IEnumerable<(string Spelling, string Word)> aliases)
    {
        NoteVocabulary all = this;
        foreach ((string spelling, string word) in aliases)
        {
            if (all.CanStandFor(word))
            {
                all = all.With(spelling, word);
            }
        }

        return all;
    }

    /// <summary>True for a word that may have another spelling.</summary>
    public bool CanStandFor(string word) => LineWords.Find(word) is not null || Leads.Find(word) is not null || Regions.Find(word) is not null || IsDescribing(word)
        || states.Values.Any(scope => scope.Find(word) is not null);

    private NoteVocabulary With(string spelling, string word)
    {
        var copy = (NoteVocabulary)MemberwiseClone();
        copy.first = first.With(spelling, word);
        copy.LineWords = LineWords.With(spelling, word);
        copy.Leads = Leads.With(spelling, word);
        copy.Regions = Regions.With(spelling, word);
        copy.states = states.ToDictionary(pair => pair.Key, pair => pair.Value.With(spelling, word));
        copy.describing = describing.ToDictionary(pair => pair.Key, pair => pair.Value.With(spelling, word));
        copy.describingSpellings = SpellingsOf(copy.describing);
        copy.describingByIndex = copy.ByIndex();
        return copy;
    }

    private Scope<DescribingWord>[] ByIndex() => [.. LineWords.Terms.OrderBy(word => word.Index).Select(word => Describing(word.Word))];

    private static Lazy<HashSet<string>> SpellingsOf(Dictionary<string, Scope<DescribingWord>> describing) =>
        new(() => describing.Values.SelectMany(scope => scope.Spellings).ToHashSet(StringComparer.OrdinalIgnoreCase));

    /// <summary>The vocabulary that is built in.</summary>
    public static NoteVocabulary Default => Shared.Value;

    /// <summary>The words a line may start with.</summary>
    public Scope<LineWord> LineWords { get; private set; }

    /// <summary>The regions of the body.</summary>
    public Scope<Region> Regions { get; private set; }

    /// <summary>The units of measure.</summary>
    public Scope<Unit> Units { get; }

    /// <summary>The objects a lump may be compared with.</summary>
    public Scope<ComparisonObject> Objects { get; }

    /// <summary>The sides of the body.</summary>
    public Scope<FixedWord> Sides { get; }

    /// <summary>The word ok and its synonyms.</summary>
    public Scope<FixedWord> Ok { get; }

    /// <summary>Phrases that stand for a line: <c>limping</c>, <c>threw up</c>, <c>SRR</c>.</summary>
    public Scope<LeadWord> Leads { get; private set; }

    /// <summary>Generic names and kinds of medicines.</summary>
    public Scope<MedicineName> Medicines { get; }

    /// <summary>Words before a sign that say that it is not there, or is there no longer.</summary>
    public Scope<ModifierWord> Before { get; }

    /// <summary>The same behind a sign.</summary>
    public Scope<ModifierWord> After { get; }

    /// <summary>Words that join, or that carry no meaning of their own.</summary>
    public Scope<ModifierWord> Small { get; }

    /// <summary>Words that start a clause, which tells when or why.</summary>
    public Scope<ModifierWord> Asides { get; }

    /// <summary>Ordinary words that name no medicine, wherever they stand.</summary>
    public Scope<FixedWord> Everyday { get; }

    /// <summary>Bounds in words: under, over, about.</summary>
    internal Scope<FixedWord> Bounds { get; }

    /// <summary>Once, twice.</summary>
    internal Scope<FixedWord> TimesWords { get; }

    /// <summary>Numbers in words.</summary>
    internal Scope<FixedWord> NumberWords { get; }

    /// <summary>Words behind a side of four that say no more than the side does.</summary>
    internal Scope<FixedWord> Limbs { get; }

    /// <summary>How often a day, in words.</summary>
    internal Scope<FixedWord> Daily { get; }

    /// <summary>Given, missed, stopped.</summary>
    internal Scope<FixedWord> DoseEvents { get; }

    /// <summary>Parts of a meal.</summary>
    internal Scope<FixedWord> Portions { get; }

    /// <summary>Words behind which something is not so.</summary>
    internal Scope<FixedWord> Exceptions { get; }

    /// <summary>Phrases that say something else than the negation in them.</summary>
    internal Scope<FixedWord> Twists { get; }

    /// <summary>Abbreviations behind any word.</summary>
    internal Scope<Abbreviation> AnyShort { get; }

    /// <summary>Abbreviations of sides.</summary>
    internal Scope<Abbreviation> SideShort { get; }

    /// <summary>Abbreviations of intervals.</summary>
    internal Scope<Abbreviation> ScheduleShort { get; }

    /// <summary>Abbreviations of routes.</summary>
    internal Scope<Abbreviation> RouteShort { get; }

    /// <summary>The words that describe what was seen at a line's word.</summary>
    internal Scope<DescribingWord> Describing(LineWord word) => describingByIndex[word.Index];

    /// <summary>The abbreviations behind a line's word.</summary>
    internal Scope<Abbreviation> Short(LineWord word) => shortByIndex[word.Index];

    /// <summary>The tooth numbers, by species and set.</summary>
    public IReadOnlyList<ToothSet> Teeth => teeth;

    /// <summary>The places an abbreviation may stand in (<c>head</c>, <c>side</c>, <c>word:alert</c>, …).</summary>
    public IEnumerable<string> AbbreviationPlaces => abbreviations.Keys;

    /// <summary>The words that describe what was seen at <paramref name="lineWord"/>, general ones included.</summary>
    public Scope<DescribingWord> Describing(string lineWord) => describing.GetValueOrDefault(lineWord, Empty<DescribingWord>.Scope);

    /// <summary>The bits of the scopes in which a spelling is or starts with this word.</summary>
    internal ulong Starts(ReadOnlySpan<char> word) => first.Of(word);

    /// <summary>True when <paramref name="word"/> is a word somewhere in the notes, and so not a slip for another.</summary>
    public bool Knows(string word) => IsDescribing(word) || CanStart(word);

    /// <summary>True when <paramref name="word"/> is more than a sign: it names a line, a place, an amount, or joins others.</summary>
    internal bool CanStart(string word) => LineWords.Find(word) is not null || Units.Find(word) is not null || Regions.Find(word) is not null || Small.Find(word) is not null || Sides.Find(word) is not null
        || Objects.Find(word) is not null || Leads.Find(word) is not null || Everyday.Find(word) is not null || Asides.Find(word) is not null || fixedWords["preposition"].Find(word) is not null;

    /// <summary>True when <paramref name="word"/> cannot be a slip for another: a word of the notes, or an ordinary word of English.</summary>
    public bool IsNoSlip(string word) => Knows(word) || fixedWords["ordinary"].Find(word) is not null;

    /// <summary>True when <paramref name="word"/> names what a note is about: a line, a place, a sign, a medicine, an amount, a side. Ordinary small words do not.</summary>
    internal bool MeansSomething(string word) => !IsSmall(word) && (LineWords.Find(word) is not null || Leads.Find(word) is not null || Regions.Find(word) is not null || Medicines.Find(word) is not null
        || Units.Find(word) is not null || Sides.Find(word) is not null || Objects.Find(word) is not null || DoseEvents.Find(word) is not null || fixedWords["dose-refused"].Find(word) is not null
        || IsDescribing(word) || IsState(word) || NumberWords.Find(word) is { Word: not "1" } || Portions.Find(word) is not null || ScheduleShort.Find(word) is not null);

    private bool IsSmall(string word) => Small.Find(word) is not null || word.Equals("in", StringComparison.OrdinalIgnoreCase) || word.Equals("on", StringComparison.OrdinalIgnoreCase);

    /// <summary>The spellings of signs, lines, phrases and medicines, of which a longer word may be a slip.</summary>
    internal IEnumerable<string> Signs => LineWords.Spellings.Concat(Leads.Spellings).Concat(describingSpellings.Value).Concat(Medicines.Spellings);

    /// <summary>True when <paramref name="word"/> says how an animal was or where a vital was taken, for some vital.</summary>
    public bool IsState(string word) => states.Values.Any(scope => scope.Find(word) is { Kind: StateKind.State or StateKind.Place });

    /// <summary>True when some part knows <paramref name="word"/> as a describing word.</summary>
    public bool IsDescribing(string word) => describingSpellings.Value.Contains(word);

    /// <summary>The word of the line that starts with <paramref name="spelling"/>: the word itself, or the one a phrase stands for; null for neither.</summary>
    public LineWord? Starting(ReadOnlySpan<char> spelling) => LineWords.Find(spelling) ?? (Leads.Find(spelling) is { } lead ? LineWords.Find(lead.Lines[0].Word) : null);

    /// <summary>The abbreviations understood in <paramref name="place"/>.</summary>
    public Scope<Abbreviation> Abbreviations(string place) => abbreviations.GetValueOrDefault(place, Empty<Abbreviation>.Scope);

    /// <summary>The states, places and routes that go with <paramref name="lineWord"/>.</summary>
    public Scope<StateWord> States(string lineWord) => states.GetValueOrDefault(lineWord, Empty<StateWord>.Scope);

    /// <summary>The words of the small closed list <paramref name="kind"/>: <c>species</c>, <c>sex</c>, <c>side</c> and so on.</summary>
    public Scope<FixedWord> Fixed(string kind) => fixedWords[kind];

    /// <summary>True when <paramref name="number"/> is a tooth of <paramref name="species"/> (of either, when it is not known).</summary>
    public bool IsTooth(int number, Species species) =>
        teeth.Any(set => (species == Species.Unknown || set.Species == species) && set.Numbers.Contains(number));

    private Dictionary<string, Scope<DescribingWord>> DescribingByLineWord()
    {
        ulong bit = first.NextBit();
        ILookup<string, DescribingWord> byPart = VocabularyTables.DescribingWords().ToLookup(w => w.Part, w => w.Word);
        Scope<DescribingWord> any = first.Add(byPart["any"], bit);
        return LineWords.Terms.Where(word => word.Has(SlotKind.Words)).Select(word => word.Word).Append(MilkTooth)
            .ToDictionary(part => part, part => first.Add(byPart[part], bit, any));
    }

    private static class Empty<T>
        where T : class, ITerm
    {
        public static readonly Scope<T> Scope = new([]);
    }
}
