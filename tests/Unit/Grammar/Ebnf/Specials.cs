using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>The vocabulary's words as the special sequences of the EBNF name them; the line's word decides which fit.</summary>
internal static class Specials
{
    private static readonly NoteVocabulary Vocabulary = NoteVocabulary.Default;

    private static readonly string[] Texts =
        ["Marlow", "heart murmur grade 2 since 2026-01", "does the ear need drops again?", "01632 960199", "a, b; c", "is half of it enough", "狗 \ud83d\udc36", "x#y", "> odd", "07:30 hr 72", "ok"];

    private static readonly string[] Remarks = ["took it well", "spat it out", "(in cheese)", "left him in peace", "\"no\", he said", "?"];
    private static readonly string[] Medicines = ["benazepril", "fish-oil", "vitamin-b12", "prednisone"];
    private static readonly string[] LongNames = ["fish oil", "ear wash", "benazepril", "glucosamine and chondroitin"];
    private static readonly string[] Foods = ["chicken and rice", "salmon biscuits", "lamb", "turkey, pumpkin"];
    private static readonly string[] Topics = ["booster", "yearly check with teeth", "trip to the vet", "2nd worming", "nails, all four paws"];

    /// <summary>One text that the special sequence allows after the line word <paramref name="word"/>.</summary>
    public static string Resolve(string special, string word, Random random) => special switch
    {
        "free words" => One(Texts, random),
        "a remark" => One(Remarks, random),
        "a remark in brackets" => One(["(shelter guess)", "(from the rescue)"], random),
        "a medicine's name of one word" => One(Medicines, random),
        "a medicine's name" => One(LongNames, random),
        "a plan in steps" => One(["5mg daily for 5d then 2.5mg daily for 5d", "10mg SID for 1w then 5mg SID", "tapering as the vet wrote it"], random),
        "words without a meaning here" => One(["grandma counted", "beside uncle Mortimer", "(neighbour filmed)", "wrote Ottilie"], random),
        "a sign of the line's word that is not there, or over" => One(Denied(word), random),
        "a phrase that stands for a line" => One(Phrases, random),
        "an event" => One(["vomit", "cough", "seizure"], random),
        "a medicine that is known" => One(["carprofen", "benazepril", "gabapentin"], random),
        "a side" => One(["left", "right", "both"], random),
        "a part that has sides" => One(["ear", "eye", "paw"], random),
        "a sign that every part has" => One(["swollen", "painful", "bleeding"], random),
        "what it is against" => One(["rabies", "lepto", "kennel cough"], random),
        "a treatment's name of one word" => One(["fipronil", "praziquantel"], random),
        "what a laboratory measured" => One(["creatinine", "ALT", "potassium"], random),
        "any unit of a laboratory" => One(["umol/L", "U/L", "g/dL", "mmol/L"], random),
        "two pressures, the higher first" => $"{random.Next(100, 200)}/{random.Next(40, 100)}",
        "a count and the whole it is of" => One(["13/14", "0/7", "6/6"], random),
        "a food's name" => One(Foods, random),
        "a finding's name" => One(["lump-sample", "weight-trend", "lump", "sign"], random),
        "what falls due" => One(Topics, random),
        "who it was" => One(["vet", "the night vet", "Owner", "technician"], random),
        "a file name" => One(["left-ear.jpg", "left ear.JPG", "gait.mp4", "x-ray"], random),
        "a name without blanks" => One(["lower", "Upper", "a", "2nd", "near-tail"], random),
        "a state of the line's word" => One(States(word, StateKind.State), random),
        "a place of the line's word" => One(States(word, StateKind.Place), random),
        "a route" => One([.. States("med", StateKind.Route), .. Vocabulary.Abbreviations("route").Spellings], random),
        "with food or without" => One(States("med", StateKind.Food), random),
        "only when needed" => One([.. States("med", StateKind.When), "PRN"], random),
        "an interval's abbreviation" => One([.. Vocabulary.Abbreviations("schedule").Terms.Where(a => a.StandsFor.StartsWith("every", StringComparison.Ordinal)).Select(a => a.Word)], random),
        // "gone" ends another sign and "none" denies it, which have rules of their own; "after-exercise" is a state first
        "a describing word of the line's word" => One([.. Vocabulary.Describing(word).Spellings.Where(spelling => Vocabulary.Describing(word).Find(spelling) is not ({ Part: "any", Word: "gone" or "resolved" } or { Word: "none" }) && Vocabulary.States(word).Find(spelling) is null)], random),
        "a comparison object" => One([.. Vocabulary.Objects.Spellings], random),
        "a tooth's number" => One(BothTeeth, random),
        "a unit of time" => One(UnitsOf(Quantity.Time), random),
        "a unit of mass of a pet" => One([.. UnitsOf(Quantity.Mass).Where(unit => Vocabulary.Units.Find(unit)!.Word is not ("mg" or "ug"))], random),
        "a unit of temperature" => One(UnitsOf(Quantity.Temperature), random),
        "a unit of length of a lump" => One([.. UnitsOf(Quantity.Length).Where(unit => Vocabulary.Units.Find(unit)!.Word is "mm" or "cm" or "in")], random),
        "a unit of distance" => One([.. UnitsOf(Quantity.Length).Where(unit => Vocabulary.Units.Find(unit)!.Word is "km" or "mi")], random),
        "a unit of volume" => One(UnitsOf(Quantity.Volume), random),
        "a unit of glucose" => One(UnitsOf(Quantity.Glucose), random),
        "a unit of amount" => One([.. UnitsOf(Quantity.Mass), .. UnitsOf(Quantity.Volume), .. UnitsOf(Quantity.Dose), .. UnitsOf(Quantity.DoseRate)], random),
        "a unit of seconds or minutes" => One([.. UnitsOf(Quantity.Time).Where(unit => Vocabulary.Units.Find(unit)!.Word is "s" or "min")], random),
        "a unit of rate" => One(UnitsOf(Quantity.Rate), random),
        "a region with a left and a right" => One(Regions(SideRule.Pair, word), random),
        "a region on the midline" => One(Regions(SideRule.Mid, word), random),
        "a region with or without a side" => One(Regions(SideRule.Any, word), random),
        "a region of all four limbs" => One(Regions(SideRule.Four, word), random),
        "a region of the front limbs" => One(Regions(SideRule.Front, word), random),
        "a region of the hind limbs" => One(Regions(SideRule.Hind, word), random),
        "two numbers, the lower first" => Ordered(random, lowerFirst: true),
        "two numbers, the higher first" => Ordered(random, lowerFirst: false),
        "01 to 12" => $"{random.Next(1, 13):00}",
        "01 to the month's last day" => $"{random.Next(1, 29):00}",
        "00 to 59" => $"{random.Next(60):00}",
        "a tab or a blank" => One([" ", "\t", "  "], random),
        "a line break" => "\n",
        _ => throw new ArgumentOutOfRangeException(nameof(special), special, "a special sequence without a meaning"),
    };

    /// <summary>Signs that are worth a word when they are missing; a general word such as a degree is not negated by itself.</summary>
    private static string[] Denied(string word) =>
    [
        .. Vocabulary.Describing(word).Terms.Where(sign => sign.Part != "any" && sign.Meanings.Any(meaning => meaning.Level > Level.Expected))
            .SelectMany(sign => new[] { $"no {sign.Word}", $"not {sign.Word}", $"{sign.Word} gone", $"no longer {sign.Word}" }),
    ];

    private static string[] Phrases { get; } =
        [.. Vocabulary.Leads.Terms.Where(lead => lead.Means != LeadMeans.Plain).SelectMany(lead => lead.Synonyms.Prepend(lead.Word))];

    private static string[] BothTeeth { get; } =
        [.. Vocabulary.Teeth.SelectMany(set => set.Numbers).Distinct().Where(n => Vocabulary.IsTooth(n, Species.Dog) && Vocabulary.IsTooth(n, Species.Cat)).Select(n => $"{n}")];

    private static string[] States(string word, StateKind kind) =>
        [.. Vocabulary.States(word).Spellings.Where(spelling => Vocabulary.States(word).Find(spelling)!.Kind == kind)];

    private static string[] UnitsOf(Quantity quantity) =>
        [.. Vocabulary.Units.Terms.Where(unit => unit.Quantity == quantity).SelectMany(unit => unit.Synonyms.Prepend(unit.Word)).Where(spelling => spelling != "#")]; // behind a blank it starts a comment

    /// <summary>Regions of both species that go with the line's word; where it takes few, one that it takes all the same.</summary>
    private static string[] Regions(SideRule sides, string word)
    {
        string role = word is "node" or "joint" or "muscle" ? word : "body";
        return [.. Vocabulary.Regions.Terms
            .Where(region => region.Sides == sides && region.Species == "both" && region.Roles.Contains(role))
            .SelectMany(region => region.Synonyms.Prepend(region.Word))];
    }

    private static string Ordered(Random random, bool lowerFirst)
    {
        int low = random.Next(1, 60);
        int high = low + random.Next(1, 60);
        string join = One(["-", "-", " - ", "–"], random);
        return lowerFirst ? $"{low}{join}{high}" : $"{high},5{join}{low}.25";
    }

    private static string One(string[] all, Random random) => all.Length == 0 ? "" : all[random.Next(all.Length)];
}

/// <summary>What the writer asks the vocabulary.</summary>
internal static class Words
{
    public static bool IsLineWord(string text) => NoteVocabulary.Default.LineWords.Find(text)?.Word == text;
}
