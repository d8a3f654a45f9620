using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>
/// A sign that is negated, or over, never counts as one that is there: each describing word of each part with each negation of the
/// table. Such a line is read so, or it is refused. General words (new, better, slight) are left out: they say more about a sign, and
/// are not signs themselves.
/// </summary>
public class NegationTests
{
    private const string Opening = "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n2026-11-01 log\n";

    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;
    private static readonly string[] Before = [.. Phrases("absent", "ended")];
    private static readonly string[] After = [.. Phrases("absent-after", "ended-after")];

    public static TheoryData<string> Parts { get; } = [.. Words.LineWords.Terms.Where(word => word.Has(SlotKind.Words)).Select(word => word.Word)];

    [Theory]
    [MemberData(nameof(Parts))]
    public void A_negated_sign_is_not_there(string part)
    {
        string start = Start(part);
        None.Wrong((
            from word in Signs(part)
            from line in Before.Where(no => !IsOwn(part, no)).Select(no => $"{start} {no} {word.Word}").Concat(After.Select(none => $"{start} {word.Word} {none}"))
            from wrong in Counted(line, word)
            select wrong).Take(40));
    }

    /// <summary>The same for each other spelling of a sign, with the commonest negations.</summary>
    [Theory]
    [MemberData(nameof(Parts))]
    public void A_negated_sign_is_not_there_however_it_is_spelled(string part)
    {
        string start = Start(part);
        None.Wrong((
            from word in Signs(part)
            from spelling in word.Synonyms
            from line in (string[])[$"{start} no {spelling}", $"{start} not {spelling}", $"{start} {spelling} none", $"{start} {spelling} gone"]
            from wrong in Counted(line, word)
            select wrong).Take(40));
    }

    /// <summary>A negation is one however its apostrophe is typed: straight, as a phone turns it, or not at all.</summary>
    [Fact]
    public void A_negation_needs_no_apostrophe() => None.Wrong(
        from no in Before.Where(no => no.Contains("n't", StringComparison.Ordinal))
        from line in (string[])[$"ear {no} red", $"belly {no} painful"]
        let meaning = MeaningPrinter.Print(NoteSyntax.Parse(line).Lines[0])
        from typed in (string[])[line.Replace('\'', '’'), line.Replace("n't", "nt", StringComparison.Ordinal)]
        let read = MeaningPrinter.Print(NoteSyntax.Parse(typed).Lines[0])
        where read != meaning
        select $"{typed} -> {read}, and with its apostrophe {meaning}");

    /// <summary>A sign may come first: <c>no limping</c>, <c>limping gone</c>.</summary>
    [Fact]
    public void A_negated_phrase_did_not_happen() => None.Wrong((
        from lead in Words.Leads.Terms
        where lead.Means == LeadMeans.Sign
            // pee none, stool none, ate none: what did not come is a sign of its own
            && lead.Lines[0].Word != "ate"
            && Words.Describing(lead.Lines[0].Word).Find("none") is not { Part: not "any" }
        from phrase in lead.Synonyms.Prepend(lead.Word)
        from line in Before.Select(no => $"{no} {phrase}").Concat(After.Select(none => $"{phrase} {none}"))
            // "no energy" is a phrase of its own, whatever stands behind it
        where !Words.Leads.Spellings.Any(own => line.StartsWith(own + " ", StringComparison.OrdinalIgnoreCase) && own.Contains(' '))
        let read = NoteSyntax.Parse(line).Lines[0]
        where read.Items.Any(item => IsThere(item, lead))
        select $"{line} -> {MeaningPrinter.Print(read)}").Take(40));

    /// <summary>
    /// Through the whole analysis, for a sample: the negated sign adds nothing to what the line reports without it. An event that cannot
    /// wait and is over has happened, and its finding says so.
    /// </summary>
    [Theory]
    [MemberData(nameof(Parts))]
    public void No_finding_names_a_negated_sign(string part)
    {
        var random = new Random(20261129);
        string start = Start(part);
        FindingLevel without = LevelOf(start);
        DescribingWord[] worrying = [.. Signs(part).Where(word => word.Meanings.All(meaning => meaning.Level > Level.Expected))];
        random.Shuffle(worrying);
        None.Wrong(
            from word in worrying.Take(Effort.Times(6))
            from line in (string[])
                [$"{start} {Before[random.Next(Before.Length)]} {word.Word}", $"{start} {word.Word} {After[random.Next(After.Length)]}", $"{start} no {word.Word}", $"{start} {word.Word} gone"]
            where NoteSyntax.Parse(line).Lines[0].Problems.IsEmpty && LevelOf(line) > without && !FindingsOf(line).Any(finding => finding.Message.Contains("written as over", StringComparison.Ordinal))
            select $"{line} -> {string.Join("; ", FindingsOf(line).Select(finding => $"{finding.Level}: {finding.Message}"))}");
    }

    private static IEnumerable<DescribingWord> Signs(string part) => Words.Describing(part).Terms.Where(word => word.Part != "any" && word.Word != "none");

    /// <summary>
    /// True where the negation says of the whole line that nothing came: <c>pee none straining</c> and <c>ate none refused</c> hold a
    /// sign of their own. A vomit or a cough that did not happen has no signs.
    /// </summary>
    private static bool IsOwn(string part, string no) => part is not ("vomit" or "cough" or "sneeze" or "seizure")
        && (no is "0" or "0x" || Words.Describing(part).Find(no) is not null || (part == "ate" && Words.Fixed("portion").Find(no) is not null));

    private static IEnumerable<string> Counted(string line, DescribingWord word)
    {
        LineSyntax read = NoteSyntax.Parse(line).Lines[0];
        return read.Items.Any(item => item.Words.Any(sign => sign.Word.Word == word.Word)) ? [$"{line} -> {MeaningPrinter.Print(read)}"] : [];
    }

    /// <summary>True where the phrase counts as seen: its sign is there, or the event it names happened.</summary>
    private static bool IsThere(NoteItem item, LeadWord lead) => lead.Lines.Any(line => line.Word == item.Word.Word
        && (line.Words.Length > 0
            ? item is not NotSeen && item.Words.Any(sign => line.Words.Contains(sign.Word.Word))
            : item is CareEvent or Finding));

    private static FindingLevel LevelOf(string line) => FindingsOf(line).Select(finding => finding.Level).DefaultIfEmpty(FindingLevel.Info).Max();

    private static IEnumerable<NoteFinding> FindingsOf(string line) =>
        NoteAnalysis.Of(Note.Read(Opening + "  " + line), Today).Findings.Where(finding => finding.Line == 5 && finding.Level < FindingLevel.Error);

    private static IEnumerable<string> Phrases(params string[] kinds) =>
        Tables.Rows("modifiers.tsv").Where(row => kinds.Contains(row["kind"])).SelectMany(row => row.Several("phrase")).Distinct();

    private static string Start(string part) => part + part switch
    {
        "lump" or "wound" or "pain-site" => " L-flank",
        "hr" => " 90",
        "rr" => " 20 asleep",
        "bcs" => " 5/9",
        "pain" => " 0/10",
        "lameness" => " 0/5",
        "murmur" => " 0/6",
        "dental" => " 0/4",
        _ => "",
    };
}
