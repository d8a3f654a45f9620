using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Turns the filled slots into the typed note of the line's kind.</content>
internal sealed partial class LineBinder
{
    /// <summary>The line's meaning; null when it lacks what its kind cannot do without.</summary>
    private NoteItem? Build() => Word.Kind switch
    {
        WordKind.Fact => BuildFact(),
        WordKind.Vital => value is null ? null : new Reading(head, value, state, place, site, [.. words], ok),
        WordKind.Exam => words.Count == 0 && !ok && value is null ? null : new Examined(head, site, tag, value, [.. words], ok),
        WordKind.Scan => site is null ? null : new Finding(head, site, tag, value, [.. words], ok),
        WordKind.Care when Word.Has(SlotKind.Medicine) => name is null ? null : new DoseEvent(head, name, amount, Manner(), note),
        WordKind.Care => problems.Count > 0 && value is null && words.Count == 0 && !ok && times is null && duration is null && name is null
            ? null
            : new CareEvent(head, value ?? amount, times, duration, distance, name, [.. words], note, timesBound, ok),
        WordKind.Task => BuildTask(),
        WordKind.Picture => name is null ? null : new Photo(head, name, note),
        WordKind.Skip => about is null ? null : new Skipped(head, about, site, note, tag),
        WordKind.Rest => ok ? new RestOk(head) : null,
        _ => null,
    };

    /// <summary>Route, food, when: the one order, whatever order they were written in.</summary>
    private ImmutableArray<StateWord> Manner() => [.. manner.OrderBy(word => word.Kind)];

    private NoteItem? BuildTask() => Word.Word switch
    {
        "recheck" => about is not null && (schedule.NamesDay || schedule.Every is not null) ? new Recheck(head, about, site, schedule, tag) : null,
        "due" => name is not null && (schedule.NamesDay || schedule.Every is not null) ? new DueTask(head, name, schedule) : null,
        _ => name is null ? null : new TextTask(head, name),
    };

    private NoteItem? BuildFact() => Word.Word switch
    {
        "species" => species is { } known ? new SpeciesFact(head, speciesSpan, known) : null,
        "sex" => male is null && neutered is null ? null : new SexFact(head, male, neutered),
        "born" => birth is null ? null : new BornFact(head, birth),
        "adult-weight" => value is null ? null : new AdultWeightFact(head, value),
        "units" => units is null ? null : new UnitsFact(head, units),
        "usual" => about is not null && value is ValueRange range ? new UsualFact(head, about, range, state, place, per) : null,
        "call-if" => about is not null && value is Limit limit ? new CallIfFact(head, about, limit, state, place, per) : null,
        "med" => name is null ? null : new MedicinePlan(head, name, amount, schedule, Manner(), note),
        "home-check" => schedule.Every is null ? null : new HomeCheckFact(head, schedule),
        "accept" => name is null || schedule.Until is null ? null : new AcceptFact(head, name, about, site, tag, schedule.Until, note),
        _ => name is null ? null : new TextFact(head, name),
    };
}
