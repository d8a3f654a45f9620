using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// Findings that an <c>accept</c> or <c>expect</c> line quiets: they are kept, as something to know, with the reason. What could not be read
/// is never quieted. What is urgent only becomes a reason to phone, where the clinic's rules override it and say why; the finding says so.
/// </summary>
public static class Accepted
{
    /// <summary>Rules whose findings are of many kinds: accepting them takes the part that is meant.</summary>
    private static readonly string[] NeedPart = ["sign", "gum-colour"];

    /// <summary>Rules about one look at a part: there the word <c>vet-knows</c> says enough. What grows or goes on is news all the same.</summary>
    private static readonly string[] VetKnowsOf = ["sides", "node-size", "mammary-lump", "lump-sample", "lump"];

    /// <summary>True when accepting this rule takes a part to be named.</summary>
    public static bool NeedsPart(string rule) => NeedPart.Contains(rule);

    /// <summary>The finding as it is to be shown.</summary>
    /// <param name="context">The facts.</param>
    /// <param name="finding">What was found.</param>
    /// <param name="day">The day of its entry; null where today counts: in the opening, and for how things stand at the end of a course.</param>
    /// <param name="item">What its line says; null where it is about no line of its own.</param>
    public static NoteFinding Apply(PetFacts context, NoteFinding finding, DateOnly? day, NoteItem? item)
    {
        if (finding.Level == FindingLevel.Urgent && context.Overrides[finding.Rule].LastOrDefault() is { Fact: { Per: { } per, Note: { } because } } lowered)
        {
            string reason = because.Text.StartsWith("because ", StringComparison.OrdinalIgnoreCase) ? because.Text["because ".Length..] : because.Text;
            return finding with
            {
                Level = FindingLevel.Call,
                Overridden = $"Urgent by its source; the clinic's rules make it a reason to phone: {reason} ({lowered.From}, per {per.Who} {per.When}).",
                Advice = Wording.Advice(FindingLevel.Call),
            };
        }

        if (finding.Level >= FindingLevel.Urgent)
        {
            return finding;
        }

        foreach (DatedFact<AcceptFact> accept in context.Accepts[finding.Rule])
        {
            DateOnly on = day ?? context.Today;
            if (on <= accept.Fact.Until.Latest && !(accept.Day > on) && Concerns(accept.Fact, item))
            {
                string reason = accept.Fact.Reason is { } why ? $": {why.Text}" : "";
                return finding.WithoutAdvice().And($"Accepted until {accept.Fact.Until}{reason} (line {accept.Line + 1}).") with
                {
                    Level = FindingLevel.Info,
                    Evidence = [.. finding.Evidence.Append(accept.Line).Distinct().Order()],
                };
            }
        }

        // signs weigh each of their words themselves
        return item is null || NeedsPart(finding.Rule) || Quiet(context, finding, day ?? context.Today, item) is not { } quiet ? finding : finding.WithoutAdvice().And(quiet.Text) with
        {
            Level = FindingLevel.Info,
            Evidence = [.. finding.Evidence.Concat(quiet.Line is { } line ? [line] : []).Distinct().Order()],
        };
    }

    private static Reason? Quiet(PetFacts context, NoteFinding finding, DateOnly day, NoteItem item) =>
        finding.Level is not (FindingLevel.Watch or FindingLevel.Call) || finding.Rule is CallIfRule.RuleName or "facts-missing" or "danger-words" or "allergy" ? null
            : Reason.Expected(context, item, null, day) ?? (VetKnowsOf.Contains(finding.Rule) && item.Words.Any(word => word.Word.Word == Reason.VetKnows) ? new Reason("The vet knows of it.", null) : null);

    private static bool Concerns(AcceptFact accept, NoteItem? item)
    {
        bool limited = accept.Item is not null || accept.Site is not null || accept.Tag is not null;
        if (!limited)
        {
            return !NeedsPart(accept.Rule.Text);
        }

        return item is not null
            && (accept.Item is null || accept.Item == item.Word)
            && (accept.Site is null || accept.Site.Name == item.Site?.Name)
            && (accept.Tag is null || accept.Tag.Name == item.Tag?.Name);
    }
}
