using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hover;

/// <summary>What is normal for such a pet on that day, what its own vet wrote, and what is usual for it.</summary>
internal static class Ranges
{
    /// <summary>All that a vital is compared with: what is normal, what its vet wrote, and what is usual by its own readings.</summary>
    public static IEnumerable<string> Of(HoverLine at, string vital) =>
    [
        .. vital == "weight" ? [] : Normal(at, vital),
        .. Own(at, vital),
        Learned(at) ?? "",
    ];

    /// <summary>The normal range with its source; one for each state where the line says none.</summary>
    private static IEnumerable<string> Normal(HoverLine at, string vital)
    {
        if (at.Reading is { } reading)
        {
            return Line(at, reading) is { } own ? [own] : [];
        }

        string[] states = vital is "rr" or "hr" ? ["asleep", "rest"] : ["any"];
        return states.Select(state => Line(at, Empty(at, vital, state))).OfType<string>().Distinct();
    }

    /// <summary>The <c>usual</c> and <c>call-if</c> lines that hold on that day for a vital.</summary>
    private static IEnumerable<string> Own(HoverLine at, string vital)
    {
        foreach (DrawnLine drawn in at.Document.Record.Facts.CallIfs.Where(drawn => drawn.Fact.From is not null && drawn.Fact.Fact.Vital.Word == vital))
        {
            CallIfFact call = drawn.Fact.Fact;
            yield return $"**Phone {(call.IsNow ? "now" : "the clinic")}{State(call.State, call.Place)}:** {(drawn.IsAbove ? "above" : "below")} {Wording.Show(drawn.Limit, UnitOf(vital, call.Limit.Unit), at.Us)}{Per(call.Per)} ({Md.Escape(drawn.Fact.From!)}).";
        }

        foreach ((int line, _, UsualFact usual) in at.Document.Note.Facts<UsualFact>(at.Day).Where(fact => fact.Fact.Vital.Word == vital))
        {
            string range = Wording.Show(ShownIn.Canonical(usual.Range.Low, usual.Range.Unit), ShownIn.Canonical(usual.Range.High, usual.Range.Unit), UnitOf(vital, usual.Range.Unit), at.Us);
            yield return $"**Usual for this pet{State(usual.State, usual.Place)}:** {range}{Per(usual.Per)} (line {line + 1}).";
        }

        foreach ((int line, _, CallIfFact call) in at.Document.Note.Facts<CallIfFact>(at.Day).Where(fact => fact.Fact.Vital.Word == vital))
        {
            string limit = Wording.Show(ShownIn.Canonical(call.Limit.Number, call.Limit.Unit), UnitOf(vital, call.Limit.Unit), at.Us);
            yield return $"**Phone {(call.IsNow ? "now" : "the clinic")}{State(call.State, call.Place)}:** {(call.Limit.Bound == Bound.Below ? "below" : "above")} {limit}{Per(call.Per)} (line {line + 1}).";
        }
    }

    /// <summary>What is usual by the readings before that day. Null when they are too few, and where its vet wrote down what is usual.</summary>
    private static string? Learned(HoverLine at) =>
        at.Reading is { Day: { } day } reading && CourseKey.Of(reading) is { } key
        && UsualNow.On(at.Document.Record, SameVital.Of(at.Document.Record.Of(key), at.Document.Record.All), day) is { Readings: { } count, Since: { } since } usual
            ? $"**Usual for this pet**, by its own readings: {Wording.Show(usual.Low, usual.High, usual.Unit, at.Us)} ({count} readings since {DayWords.Iso(since)})."
            : null;

    private static string? Line(HoverLine at, NoteReading reading)
    {
        if (at.Document.Record.Pet.KeyOf(reading) is not { } key || ClinicalTables.Default.NormalFor(key) is not { } normal)
        {
            return null;
        }

        string stage = at.Document.Record.Pet.StageOn(at.Day)?.Name ?? "grown, age not written";
        string animal = key.Species == Species.Cat ? "cat" : "dog";
        string state = reading.Comparable is "any" or null || reading.What == "glucose" ? "" : reading.Comparable == "rest" ? ", at rest" : $", {reading.Comparable}";
        string size = key.Size is { } known and not "any" ? $", {known}" : "";
        string note = normal.Note.Length > 0 ? " " + Md.Sentence(normal.Note) : "";
        return $"**Normal for this {animal}** ({stage}{size}{state}): {Wording.Show(normal, at.Us)}.{note}{Md.Source(normal.Source)}";
    }

    /// <summary>A reading of nothing yet: it is only looked up.</summary>
    private static NoteReading Empty(HoverLine at, string vital, string state) =>
        new(at.Index, default, at.Day, null, vital, vital == "temp" ? "rectal" : null, null, null, state, "", new ReadValue(0, "", null, null, Bound.Exact));

    private static string UnitOf(string vital, Unit? unit) => unit?.Canonical ?? vital switch { "hr" or "rr" => "/min", "bcs" => "/9", "mcs" => "/3", "pain" => "/10", _ => "" };

    private static string State(StateWord? state, StateWord? place) =>
        (state is null ? "" : " " + state.Word) + (place is null ? "" : $" ({place.Word})");

    private static string Per(Attribution? per) => per is null ? "" : $", per {Md.Escape(per.Who)}{(per.When is { } when ? $" {when}" : "")}";
}
