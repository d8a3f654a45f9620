using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A seizure: the first ever, one of five minutes or more, or a second within a day.</summary>
public sealed class SeizureRule : IEntryRule
{
    private static readonly CareLimit Long = CareLimits.All.First(row => row.What == "seizure-long");
    private static readonly CareLimit Again = CareLimits.All.First(row => row.What == "seizure-again");
    private static readonly string[] Names = ["epilep", "seizure", "convulsion"];

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("seizure", "seen", 10);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            if (Stopped(at, entry, line, item) is { } stopped)
            {
                yield return stopped;
            }
            else if (item is CareEvent { Word.Word: "seizure", Times: not 0 } seizure)
            {
                var now = new Noted(entry.Entry.Head, line, seizure, null);
                yield return Judge(at, now, seizure, at.Before(CourseKey.Of(seizure), entry.Day, now.Time, line, 1, noted => noted.Item is CareEvent { Times: not 0 }) is [var before] ? before : null);
            }
        }
    }

    /// <summary>A seizure that is written as over and has no line of its own: it happened.</summary>
    private NoteFinding? Stopped(PetRecord at, PetEntry entry, int line, NoteItem item) =>
        item is NotSeen { Word.Word: "seizure" } && item.Words.Concat(item.Absent).Any(sign => sign.Word.Word is "gone" or "resolved")
            && at.Before(CourseKey.Of(item), entry.Day, item.Head.Time, line, 1, noted => noted.Item is CareEvent { Times: not 0 }).IsEmpty
            && !at.Facts.Knowns.Any(fact => Names.Any(name => fact.Fact.Text.Text.Contains(name, StringComparison.OrdinalIgnoreCase)))
                ? this.At(FindingLevel.Call, line, item.Head.Span, "A seizure that is written as over. No line before tells of it: it happened.", "common practice, no source")
                : null;

    private NoteFinding Judge(PetRecord at, Noted now, CareEvent seizure, Noted? before)
    {
        if (seizure.Duration is { Bound: not Bound.Below } duration && UnitConversion.ToCanonical(duration) >= Long.Value)
        {
            return At(Long.Level, $"Seizure of {Long.Value / 60:0.#} minutes or more.", Long.Source);
        }

        if (seizure.Times is > 1)
        {
            return At(Again.Level, $"{seizure.Times} seizures written in one line: two or more in a day.", Again.Source);
        }

        if (before is not null && now.Moment - before.Moment <= TimeSpan.FromHours((double)Again.Value))
        {
            return this.At(Again.Level, now.Line, seizure.Head.Span,
                $"Second seizure within {Again.Value:0} hours (line {before.Line + 1}).", Again.Source, before.Line);
        }

        // the vet knows of them: the first one written here is not the first
        if (before is null && at.Facts.Knowns.FirstOrDefault(fact => !(fact.Day > now.Head.Date) && Names.Any(name => fact.Fact.Text.Text.Contains(name, StringComparison.OrdinalIgnoreCase))) is { } known)
        {
            return this.At(FindingLevel.Watch, now.Line, seizure.Head.Span,
                $"Seizure. Known: {known.Fact.Text.Text} (line {known.Line + 1}).", "common practice, no source", known.Line);
        }

        return before is null
            ? At(FindingLevel.Call, "First seizure in these notes.", "common practice, no source")
            : this.At(FindingLevel.Watch, now.Line, seizure.Head.Span,
                $"Seizure; the one before is in line {before.Line + 1}.", "common practice, no source", before.Line);

        NoteFinding At(FindingLevel level, string message, string source) =>
            this.At(level, now.Line, seizure.Head.Span, message, source);
    }
}
