using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Writes one observation in its one canonical order: for a note, for a reader, or in the vocabulary's words alone.</summary>
public static class ItemPrinter
{
    /// <summary>The line without indent and comment, as <c>format</c> writes it: describing words keep the owner's own form.</summary>
    public static string Print(NoteItem item) => Print(item, new Style(Own: true, Signs: true));

    /// <summary>What was read, for a person: describing words in the owner's own form, a remark in quotes, and all else worked out.</summary>
    public static string ForReader(NoteItem item) => Print(item, new Style(Own: false, Signs: true));

    /// <summary>What was read, in the vocabulary's own words, so that two ways to write one thing compare equal; a remark stands in quotes.</summary>
    public static string Meaning(NoteItem item) => Print(item, new Style(Own: false, Signs: false));

    private static string Print(NoteItem item, Style style)
    {
        var words = new List<string>();
        if (item.Head.Time is { } time)
        {
            words.Add(time.ToString("HH:mm", CultureInfo.InvariantCulture));
        }

        words.Add(item.Word.Word);
        foreach (string word in Rest(item, style).Where(word => word.Length > 0))
        {
            // two words that would be read as one phrase are kept apart by a comma: pale, yellow
            words[^1] += style.Own && words.Count > 1 && item is Reading or Examined or Finding or CareEvent or Skipped or ExpectFact && Phrases.Start((item is ExpectFact ? item.About! : item.Word).Word, words[^1], word) ? "," : "";
            if (word.StartsWith(", ", StringComparison.Ordinal))
            {
                words[^1] += ",";
            }

            words.Add(word.TrimStart(',', ' '));
        }

        return string.Join(' ', words);
    }

    private static IEnumerable<string> Rest(NoteItem item, Style style) => item switch
    {
        SpeciesFact fact => [fact.Species == Species.Dog ? "dog" : "cat", style.Remark(item.Note)],
        SexFact sex => [sex.Male switch { true => "male", false => "female", null => "" }, sex.Neutered switch { true => "neutered", false => "entire", null => "" }, style.Remark(item.Note)],
        BornFact born => [born.Date.ToString(), style.Remark(item.Note)],
        UnitsFact fact => [fact.Units.Word],
        UsualFact usual => [usual.Vital.Word, ValuePrinter.Print(usual.Range), Word(usual.State), Word(usual.Place), Per(usual.Per), style.Remark(item.Note)],
        CallIfFact call => [call.Vital.Word, Word(call.State), Word(call.Place), ValuePrinter.Print(call.Limit), Per(call.Per), style.Remark(item.Note)],
        MedicineRangeFact range => [range.Medicine.Text, ValuePrinter.Print(range.Range), Per(range.Per), style.Remark(item.Note)],
        MedicineStrengthFact strength => [strength.Medicine.Text, Value(strength.Value), Per(strength.Body.First<Attribution>()), style.Remark(item.Note)],
        OverrideFact lowered => [lowered.Rule.Text, Per(lowered.Per), style.Remark(item.Note)],
        MedicinePlan plan => [plan.Medicine.Text, style.Dose(item), .. Manners(plan, StateKind.Route), .. Times(plan.Schedule), .. Manners(plan, StateKind.Food, StateKind.When), style.Remark(plan.Note)],
        AcceptFact accept => [accept.Rule.Text, accept.Item?.Word ?? "", accept.Site?.Name ?? "", Tag(accept.Tag), $"until {accept.Until}", style.Remark(accept.Reason)],
        ExpectFact expect => [expect.Item.Word, expect.Site?.Name ?? "", Tag(expect.Tag), .. Signs(expect, style), $"until {expect.Until}", Per(expect.Per)],
        Photo photo => [photo.File.Text, photo.Caption?.Text ?? ""],
        RestOk => ["ok"],
        CareEvent { Food: not null } care => [.. Signs(care, style), care.Food.Text, Value(care.Value), .. Behind(care, style)],
        Reading => [Value(item.Value), item.Site?.Name ?? "", Word(item.Place), Word(item.State), .. Signs(item, style), .. Behind(item, style)],
        _ =>
        [
            item.About?.Word ?? "", item.Name?.Text ?? "", item.Site?.Name ?? "", Tag(item.Tag), style.Dose(item), .. Manners(item, StateKind.Route, StateKind.Food, StateKind.When),
            Word(item.Place), Word(item.State), LacksNone(item, style) ? "none" : "", .. Signs(item, style),
            item.Body.Get<ValueRange>(SlotKind.Reference) is { } range ? "ref " + ValuePrinter.Print(range) : "", .. Times(item.Schedule), .. Behind(item, style),
        ],
    };

    /// <summary>True for what was not seen, where no sign that is printed says so.</summary>
    private static bool LacksNone(NoteItem item, Style style) =>
        item is NotSeen && item.Body.Absent.All(sign => sign.Sense == Sense.Absent && sign.Span.Start >= item.Head.Span.End) && item.Body.First<EventCount>() is null
        && !(style.Own && item.Body.Words.Any(sign => sign.Word.Word == "none"))
        && (item.Body.Words.IsEmpty || item.Body.Words.Any(sign => sign.Word.Word is not ("gone" or "resolved")));

    private static IEnumerable<string> Behind(NoteItem item, Style style) =>
    [
        item.Ok ? "ok" : "",
        item.Body.First<EventCount>() is { } times ? $"{ValuePrinter.Mark(times.Bound)}{times.Number}x" : "",
        item.Body.Get<Extent>(SlotKind.Duration) is { } duration ? ValuePrinter.Print(duration.Amount) : "",
        item.Body.Get<Extent>(SlotKind.Distance) is { } distance ? ValuePrinter.Print(distance.Amount) : "",
        item.Since?.Text ?? "",
        style.Remark(item.Note),
    ];

    private static IEnumerable<string> Signs(NoteItem item, Style style) => item.Body.All<Described>(SlotKind.Words)
        .Where(sign => style.Own || !(item is NotSeen && sign.Word.Word == "none"))
        .Select((sign, index) => index > 0 && sign is { Sense: Sense.Present, Word: { Part: "any", Word: "gone" or "resolved" } } ? ", " + style.Sign(sign) : style.Sign(sign));

    private static IEnumerable<string> Times(Schedule schedule)
    {
        (string Word, string? Value)[] all =
        [
            ("every ", schedule.EveryTo is { } to && schedule.Every is { } from ? $"{ValuePrinter.Print(from)[..^from.Unit.Word.Length]}-{ValuePrinter.Print(to)}" : Amount(schedule.Every)),
            ("for ", Amount(schedule.For)),
            ("in ", Amount(schedule.In)),
            ("from ", schedule.From?.ToString()),
            ("until ", schedule.Until?.ToString()),
            ("", schedule.On?.ToString()),
            ("at ", schedule.At?.ToString("HH:mm", CultureInfo.InvariantCulture)),
        ];
        return all.Where(part => part.Value is not null).Select(part => part.Word + part.Value);
    }

    private static string? Amount(Amount? amount) => amount is { } value ? ValuePrinter.Print(value) : null;

    private static IEnumerable<string> Manners(NoteItem item, params StateKind[] kinds) =>
        item.Manner.Where(manner => kinds.Contains(manner.Kind)).Select(manner => manner.Kind == StateKind.Route ? manner.Word : manner.Synonyms[0]);

    private static string Value(NoteValue? value) => value is null ? "" : ValuePrinter.Print(value);

    private static string Word(StateWord? word) => word?.Word ?? "";

    private static string Tag(FindingTag? tag) => tag is null ? "" : "@" + tag.Name;

    private static string Per(Attribution? per) =>
        per is null ? "" : string.Join(' ', new[] { "per", per.Who, per.When?.ToString() ?? "" }.Where(word => word.Length > 0));

    /// <summary>How words are written.</summary>
    /// <param name="Own">Everything as a note has it, else as it was read.</param>
    /// <param name="Signs">Describing words in the owner's own form, else in the vocabulary's.</param>
    private readonly record struct Style(bool Own, bool Signs)
    {
        public string Sign(Described sign)
        {
            string word = Signs ? sign.Text : sign.Word.Word;
            return sign.Sense switch { Sense.Absent => "no " + word, Sense.Ended => word + " gone", _ => word };
        }

        public string Remark(FreeWords? remark) => remark is null ? "" : Own ? remark.Text : $"\"{remark.Text}\"";

        /// <summary>The amount; in a note with the strength and the count it follows from, for a reader with the strength in brackets.</summary>
        public string Dose(NoteItem item) => Own && item.Value is Portion { Text: { } written } ? written : (!Own && !Signs) || item.Body.Get<FreeWords>(SlotKind.Strength) is not { } strength ? Value(item.Value)
            : !Own ? $"{Value(item.Value)} ({strength.Text})"
            : item.Body.Get<Measure>(SlotKind.StrengthOfOne) is { Amounts: [{ Number: > 0 } one] } && item.Value is Measure { Amounts: [var amount] }
                ? $"{strength.Text}, {ValuePrinter.Print(new Amount(amount.Number / one.Number, NoteVocabulary.Default.Units.Find("tablet")!, amount.Over))}"
                : $"{strength.Text} {Value(item.Value)}".TrimEnd();
    }
}
