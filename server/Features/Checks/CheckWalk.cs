using System.Globalization;
using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;

namespace HealthNotes.Features.Checks;

/// <summary>One step of a check that is done beside the animal.</summary>
/// <param name="Line">How its line starts; what was seen follows.</param>
/// <param name="Title">What is looked at, in words.</param>
/// <param name="Ok">The line of a part that is as it should be; null for what is measured.</param>
/// <param name="Skip">The line of a step that was left out; a reason may follow.</param>
/// <param name="How">How it is done; null where nobody needs to be told.</param>
/// <param name="Last">The last line about it, with its day; null before the first.</param>
/// <param name="Counted">True for what is counted against time.</param>
public sealed record WalkStep(string Line, string Title, string? Ok, string? Skip, string? How, string? Last, bool Counted);

/// <summary>A check as a walk from head to tail: the plan that the sheet and the entry to be filled in are made from too.</summary>
public static class CheckWalk
{
    /// <summary>The heading of today's check.</summary>
    public static string HeadOf(Document document) => document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + " check";

    /// <summary>The steps for the pet of a note.</summary>
    public static IEnumerable<WalkStep> Of(Document document)
    {
        var plan = CheckPlan.Of(document.Record);
        string? Shown(Noted? last) => last is null ? null
            : string.Create(CultureInfo.InvariantCulture, $"{last.Day:yyyy-MM-dd}: {document.Syntax.Lines[last.Line].Text.Trim()}");
        return
        [
            .. plan.Items.Select(step => Of(document, step, Shown(step.Standing.FirstOrDefault() ?? step.Last))),
            .. plan.Places.Select(place => new WalkStep($"{place.Life.Key.Word} {place.Life.Name}", $"{Wording.NameOf(place.Life.Key.Word)} {place.Number}: {place.Life.Name}", null, null, "Measure it across its longest side.", null, Counted: false)),
        ];
    }

    private static WalkStep Of(Document document, CheckStep step, string? last)
    {
        LineWord word = step.Item.Word;
        HowToTake? how = HowToTake.Of(word.Word, document.Record.Pet.Species);
        string start = step.Item.Site is { } site ? $"{step.LineStart} {site}" : step.LineStart;
        return new WalkStep(
            start, Wording.NameOf(word.Word), step.Item.IsMeasured ? null : $"{start} ok", $"skip {word.Word}",
            how is null ? null : how.Caution is { } caution ? $"{how.InShort} {caution}" : how.InShort, last, Counted: word.Word is "hr" or "rr");
    }
}
