using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Actions.OfFindings;

/// <summary>What an owner may do with a finding: ask the vet about it, or accept it for a while.</summary>
internal static class FindingActions
{
    /// <summary>The stable names of the two, for editors that ask before they act.</summary>
    public const string Ask = "ask-vet";
    public const string Accept = "accept";

    private const int MostFindings = 5;
    private const int MonthsAhead = 1;
    private const int Indent = 2;

    /// <summary>The offers for the findings of the range's lines, those that it touches first.</summary>
    public static IEnumerable<ActionOffer> In(Document document, PlaceRange range)
    {
        foreach (NoteFinding finding in Sorted.Between(document.Analysis.Findings, finding => finding.Line, range.Start.Line, range.End.Line)
            .Where(finding => finding.Level is FindingLevel.Watch or FindingLevel.Call or FindingLevel.Urgent)
            .OrderByDescending(finding => range.Touches(PlaceRange.Of(finding.Line, finding.Span))).Take(MostFindings))
        {
            string about = finding.Found.Split(". ")[0].Split(" (")[0].TrimEnd('.', ' ');
            yield return Offer(Ask, $"Add to questions for the vet: {about}", AskLine(document, $"ask about: {about}"));
            if (finding.Level != FindingLevel.Urgent && RuleBook.IsKnown(finding.Rule) && document.Note.Opening.Facts is [.., var last]
                && AcceptLine.Start(document, finding) is var start && !(start == finding.Rule && Accepted.NeedsPart(finding.Rule)))
            {
                string line = $"accept {start} until {DayWords.Iso(document.Today.PlusMonths(MonthsAhead))}";
                yield return Offer(Accept, $"Write: {line}", WholeLines.InsertBelow(document, last.Line, [line]));
            }
        }
    }

    /// <summary>The question goes into today's entry, or a new one: at a visit it would count as asked.</summary>
    private static DocumentEdit AskLine(Document document, string line)
    {
        Entry? today = document.Note.Entries.LastOrDefault() is { Head: { Kind: not "visit", Date: var day } } last && day == document.Today ? last : null;
        return today is null
            ? NewEntry.AtEnd(document, [$"{DayWords.Iso(document.Today)} log", new string(' ', Indent) + line]).Edit
            : WholeLines.InsertBelow(document, LastWritten(document, today), [new string(' ', Indent) + line]);
    }

    private static int LastWritten(Document document, Entry entry)
    {
        int last = EntryLines.LastOf(document, entry);
        while (last > entry.Line && document.Syntax.Lines[last].Text.AsSpan().IsWhiteSpace())
        {
            last--;
        }

        return last;
    }

    private static ActionOffer Offer(string id, string title, DocumentEdit edit) => new(id, title, ActionKind.Rewrite, [edit], IsPreferred: false, ImmutableArray<FixedFinding>.Empty);
}
