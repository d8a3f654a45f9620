using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Formatting;

/// <summary>Writes the meaning of one line in its one canonical order and spelling.</summary>
public static class ItemPrinter
{
    /// <summary>The line without indent and comment.</summary>
    public static string Print(NoteItem item)
    {
        var words = new List<string>();
        if (item.Head.Time is { } time)
        {
            words.Add(time.ToString("HH:mm", CultureInfo.InvariantCulture));
        }

        words.Add(item.Word.Word);
        foreach (string word in Rest(item).Where(word => word.Length > 0))
        {
            // two words that would be read as one phrase are kept apart by a comma: pale, yellow
            words[^1] += words.Count > 1 && item is Reading or Examined or Finding or CareEvent or Skipped && Phrases.Start(item.Word.Word, words[^1], word) ? "," : "";
            words.Add(word);
        }

        return string.Join(' ', words);
    }

    private static IEnumerable<string> Rest(NoteItem item) => item switch
    {
        TextFact fact => [fact.Text.Text],
        TextTask task => [task.Text.Text],
        SpeciesFact fact => [fact.Species == Species.Dog ? "dog" : "cat"],
        SexFact sex => [sex.Male switch { true => "male", false => "female", null => "" }, sex.Neutered switch { true => "neutered", false => "entire", null => "" }],
        BornFact born => [born.Date.ToString()],
        AdultWeightFact fact => [ValuePrinter.Print(fact.Weight)],
        UnitsFact fact => [fact.Units.Word],
        UsualFact usual => [usual.Vital.Word, ValuePrinter.Print(usual.Range), Word(usual.State), Word(usual.Place), Per(usual.Per)],
        CallIfFact call => [call.Vital.Word, Word(call.State), Word(call.Place), ValuePrinter.Print(call.Limit), Per(call.Per)],
        MedicinePlan plan => [plan.Medicine.Text, Value(plan.Dose), .. Manners(plan.Manner, StateKind.Route), .. Times(plan.Schedule), .. Manners(plan.Manner, StateKind.Food, StateKind.When)],
        HomeCheckFact fact => Times(fact.Schedule),
        AcceptFact accept => [accept.Rule.Text, accept.Item?.Word ?? "", accept.Site?.Name ?? "", Tag(accept.Tag), $"until {accept.Until}", accept.Reason?.Text ?? ""],
        Reading reading => [ValuePrinter.Print(reading.Value), reading.Site?.Name ?? "", Word(reading.Place), Word(reading.State), .. Describing(reading.Words), Ok(reading.Ok)],
        Examined examined => [examined.Site?.Name ?? "", Tag(examined.Tag), Value(examined.Size), .. Describing(examined.Words), Ok(examined.Ok)],
        Finding finding => [finding.Site.Name, Tag(finding.Tag), Value(finding.Size), .. Describing(finding.Words), Ok(finding.Ok)],
        DoseEvent dose => [dose.Medicine.Text, Value(dose.Dose), .. Manners(dose.Manner, StateKind.Route, StateKind.Food), dose.Note?.Text ?? ""],
        CareEvent care => Care(care),
        Recheck recheck => [recheck.Item.Word, recheck.Site?.Name ?? "", Tag(recheck.Tag), .. Times(recheck.Schedule)],
        DueTask due => [due.Topic.Text, .. Times(due.Schedule)],
        Photo photo => [photo.File.Text, photo.Caption?.Text ?? ""],
        Skipped skipped => [skipped.Item.Word, skipped.Site?.Name ?? "", Tag(skipped.Tag), skipped.Reason?.Text ?? ""],
        RestOk => ["ok"],
        _ => throw new ArgumentOutOfRangeException(nameof(item), item, "an item without a printed form"),
    };

    /// <summary>The name of a food holds all words up to its amount, so what describes the food stands before it.</summary>
    private static IEnumerable<string> Care(CareEvent care) =>
    [
        .. care.Food is null ? [] : Describing(care.Words),
        care.Food?.Text ?? "",
        Value(care.Quantity),
        .. care.Food is null ? Describing(care.Words) : [],
        Ok(care.Ok),
        care.Times is { } times ? $"{ValuePrinter.Mark(care.TimesBound)}{times}x" : "",
        care.Duration is { } duration ? ValuePrinter.Print(duration) : "",
        care.Distance is { } distance ? ValuePrinter.Print(distance) : "",
        care.Note?.Text ?? "",
    ];

    private static IEnumerable<string> Times(Schedule schedule)
    {
        (string Word, string? Value)[] all =
        [
            ("every ", Amount(schedule.Every)),
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

    private static IEnumerable<string> Manners(IEnumerable<StateWord> manners, params StateKind[] kinds) =>
        manners.Where(manner => kinds.Contains(manner.Kind)).Select(manner => manner.Kind == StateKind.Route ? manner.Word : manner.Synonyms[0]);

    private static IEnumerable<string> Describing(IEnumerable<Described> words) => words.Select(word => word.Word.Word);

    private static string Ok(bool ok) => ok ? "ok" : "";

    private static string Value(NoteValue? value) => value is null ? "" : ValuePrinter.Print(value);

    private static string Word(StateWord? word) => word?.Word ?? "";

    private static string Tag(FindingTag? tag) => tag is null ? "" : "@" + tag.Name;

    private static string Per(Attribution? per) =>
        per is null ? "" : string.Join(' ', new[] { "per", per.Who, per.When?.ToString() ?? "" }.Where(word => word.Length > 0));
}
