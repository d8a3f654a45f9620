using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>One side compared with the other: <c>right worse than left</c> is about both.</summary>
internal static class ComparedSides
{
    /// <summary>How many parts stand between a side and <c>than</c> at most: <c>left one a bit more than the right</c>.</summary>
    private const int MostBeforeThan = 5;

    /// <summary>How many parts say that one side is more so than the other, which is about both: <c>right worse than left</c>, <c>R&gt;L</c>; 0 where none do.</summary>
    public static int Length(Cursor at)
    {
        int index = at.At + (at.Is(at.At, "the") ? 1 : 0);
        if (at.Word.Kind != WordKind.Exam || at.Phrase(at.Vocabulary.Sides, index, out FixedWord? one) is not (> 0 and var sides) || one!.Word is not ("L" or "R"))
        {
            return 0;
        }

        index += sides;
        for (int end = index; end < at.Parts.Count && end - index < MostBeforeThan && !at.StartsSegment(end); end++)
        {
            ReadOnlySpan<char> text = at.TextAt(end);
            bool more = text[0] == '>';
            if (!more && text is not "than")
            {
                continue;
            }

            int behind = end + (more && text.Length > 1 ? 0 : 1);
            behind += at.Is(behind, "the") || at.Is(behind, "on") || at.Is(behind, "in") ? 1 : 0;
            string? other = at.Vocabulary.Sides.Find(behind == end ? text[1..] : behind < at.Parts.Count ? at.TextAt(behind) : "")?.Word;
            return other is "L" or "R" && other != one.Word ? behind + (at.Is(behind + 1, "one") || at.Is(behind + 1, "side") ? 2 : 1) - at.At : 0;
        }

        return 0;
    }
}
