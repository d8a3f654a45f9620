using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A seizure: the first ever, one of five minutes or more, or a second within a day.</summary>
public sealed class SeizureRule : IEntryRule
{
    private const string Definitions = "Berendt et al., IVETF consensus, BMC Vet Res 2015;11:182 (from memory)";
    private const decimal LongSeconds = 300;
    private static readonly string[] Names = ["epilep", "seizure", "convulsion"];

    /// <inheritdoc/>
    public string Name => "seizure";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        foreach ((int line, NoteItem item) in at.Entry.Items)
        {
            if (item is CareEvent { Word.Word: "seizure", Times: not 0 } seizure)
            {
                yield return Judge(at, line, seizure, History.MomentOf(at.Entry, seizure), at.Earlier.SeizureBefore(line, History.MinuteOf(seizure)));
            }
        }
    }

    private NoteFinding Judge(EntryContext at, int line, CareEvent seizure, DateTime? when, NotedSeizure? before)
    {
        if (seizure.Duration is { Bound: not Bound.Below } duration && UnitConversion.ToCanonical(duration) >= LongSeconds)
        {
            return At(FindingLevel.Urgent, "Seizure of 5 minutes or more.", Definitions);
        }

        if (seizure.Times is > 1)
        {
            return At(FindingLevel.Urgent, $"{seizure.Times} seizures written in one line: two or more in a day.", Definitions);
        }

        if (before is { When: { } earlier } && when is { } now && now - earlier <= TimeSpan.FromHours(24))
        {
            return RuleContext.At(Name, FindingLevel.Urgent, line, seizure.Head.Span,
                $"Second seizure within 24 hours (line {before.Line + 1}). {Wording.Advice(FindingLevel.Urgent)}", Definitions, before.Line);
        }

        // the vet knows of them: the first one written here is not the first
        if (before is null && at.Note.Knowns.FirstOrDefault(fact => !(fact.Day > at.Entry.Head.Date) && Names.Any(name => fact.Fact.Text.Text.Contains(name, StringComparison.OrdinalIgnoreCase))) is { } known)
        {
            return RuleContext.At(Name, FindingLevel.Watch, line, seizure.Head.Span,
                $"Seizure. Known: {known.Fact.Text.Text} (line {known.Line + 1}). {Wording.Advice(FindingLevel.Watch)}", "common practice, no source", known.Line);
        }

        return before is null
            ? At(FindingLevel.Call, "First seizure in these notes.", "common practice, no source")
            : RuleContext.At(Name, FindingLevel.Watch, line, seizure.Head.Span,
                $"Seizure; the one before is in line {before.Line + 1}. {Wording.Advice(FindingLevel.Watch)}", "common practice, no source", before.Line);

        NoteFinding At(FindingLevel level, string message, string source) =>
            RuleContext.At(Name, level, line, seizure.Head.Span, $"{message} {Wording.Advice(level)}", source);
    }
}
