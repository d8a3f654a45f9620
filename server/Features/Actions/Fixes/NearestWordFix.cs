using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A word that is not known gives way to the known word that was most likely meant. Where that makes the whole line right, the
/// line is written: the reader is certain of it. It may be done unread only for one slip, or where no word was guessed.
/// </summary>
internal static class NearestWordFix
{
    private const int ShortestCertain = 5;

    /// <summary>The corrected line, where the reader is certain of it; else the word that was likely meant.</summary>
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        if (finding.Corrected is { } corrected)
        {
            return Whole(at, corrected, finding.Nearest is null || IsOneSlip(at, finding));
        }

        return finding.Nearest is not { } nearest ? []
            : at.Better(finding, [new LineFix("nearest-word", $"Write `{nearest}`", finding.Span, nearest, Preferred: true, Certain: IsOneSlip(at, finding) && finding.Rule != ProblemRules.WrongUnit)]);
    }

    /// <summary>The line as it should be; indent and comment stay.</summary>
    public static IEnumerable<LineFix> Whole(LineAt at, string corrected, bool certain)
    {
        LineSyntax right = NoteSyntax.Parse("\n" + corrected).Lines[1];
        string text = right.Text[..LineAt.ContentEnd(right)];
        yield return new LineFix("corrected-line", $"Write: {text}", TextSpan.Between(at.Line.Indent, LineAt.ContentEnd(at.Line)), text, Preferred: true, certain);
    }

    /// <summary>A medicine with an interval in an entry may be a dose or a plan: both lines are offered.</summary>
    public static IEnumerable<LineFix> DoseOrPlan(LineAt at)
    {
        if (at.Line.Item is not MedicinePlan { Head.Span.Length: 0 } plan)
        {
            return [];
        }

        var dose = new DoseEvent(plan.Head with { Word = NoteVocabulary.Default.LineWords.Find("gave")! }, new ItemBody([.. plan.Body.Filled.Where(slot => slot.Value is not Schedule)]));
        return ((NoteItem[])[dose, plan]).SelectMany(item => Whole(at, ItemPrinter.Print(item), certain: false)).Select(fix => fix with { Preferred = false });
    }

    /// <summary>True when the two are one slip apart, and long enough that this says something.</summary>
    private static bool IsOneSlip(LineAt at, NoteFinding finding) => finding.Span.Length >= ShortestCertain && NearestWord.Find(finding.Span.In(at.Text).TrimEnd(".:!?").ToString(), [finding.Nearest!], most: 1) is not null;
}
