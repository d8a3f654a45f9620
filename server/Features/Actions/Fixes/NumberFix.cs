using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A number with a slip: two numbers in the wrong order, a comma that can be read two ways, a sign written twice, a line to
/// cross without its sign, a span of time without its word. Each reading that makes sense is offered; the writer decides.
/// </summary>
internal static class NumberFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        List<LineFix> fixes = [.. at.Better(finding, Candidates(at, finding))];
        return fixes.Count == 1 ? [fixes[0] with { Preferred = true }] : fixes;
    }

    private static IEnumerable<LineFix> Candidates(LineAt at, NoteFinding finding)
    {
        string written = finding.Span.In(at.Text).ToString();
        List<TextSpan> numbers = Numbers.In(written, new TextSpan(0, written.Length));
        if (Swapped(written, numbers) is { } swapped)
        {
            yield return Write("swap-numbers", finding, swapped);
        }

        int comma = written.IndexOf(',', StringComparison.Ordinal);
        if (comma > 0)
        {
            yield return Write("decimal-mark", finding, written.Remove(comma, 1));
            yield return Write("decimal-mark", finding, written.Remove(comma, 1).Insert(comma, "."));
        }

        if (Once(written) is { } once)
        {
            yield return Write("sign-once", finding, once);
        }

        if (at.Word?.Word is "call-if" or "phone-now-if" && numbers is [{ Start: 0 }])
        {
            yield return Write("limit-sign", finding, ">" + written);
            yield return Write("limit-sign", finding, "<" + written);
        }

        // how often and how long a medicine is given is for who ordered it to say
        if (numbers is [{ Start: 0 }] && at.Word is { } word && word.Has(SlotKind.Schedule) && !word.Has(SlotKind.Medicine))
        {
            foreach (string joining in (string[])["every", "for", "in"])
            {
                yield return Write("time-word", finding, $"{joining} {written}");
            }
        }
    }

    private static LineFix Write(string id, NoteFinding finding, string text) => new(id, $"Write `{text}`", finding.Span, text);

    private static string? Swapped(string written, List<TextSpan> numbers)
    {
        if (numbers.Count != 2)
        {
            return null;
        }

        (TextSpan first, TextSpan second) = (numbers[0], numbers[1]);
        if (Numbers.Value(second.In(written)) is null or 0)
        {
            return null;
        }

        return string.Concat(written.AsSpan(0, first.Start), second.In(written), written.AsSpan(first.End, second.Start - first.End))
            + string.Concat(first.In(written), written.AsSpan(second.End));
    }

    /// <summary>The text with each run of one and the same sign as one; null when there is none.</summary>
    private static string? Once(string written)
    {
        string once = string.Concat(written.Where((c, i) => i == 0 || char.IsLetterOrDigit(c) || char.IsSurrogate(c) || c != written[i - 1]));
        return once.Length < written.Length && once.Any(char.IsDigit) ? once : null;
    }
}
