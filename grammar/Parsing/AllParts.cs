using HealthNotes.Grammar.Text;
using Pidgin;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// A Pidgin parser that repeats one part up to the end of the input. Pidgin's own <c>Many</c> is not used: its generic
/// types nest without end, which the native compiler refuses (IL3054), and it drops what else would have fitted.
/// </summary>
internal sealed class AllParts(Parser<char, Part> one, Parser<char, Unit> separators) : Parser<char, ArraySegment<Part>>
{
    private const int UsualCount = 4;

    public override bool TryParse(ref ParseState<char> state, ref PooledList<Expected<char>> expecteds, out ArraySegment<Part> result)
    {
        result = default;
        var parts = new Part[UsualCount];
        int count = 0;
        _ = separators.TryParse(ref state, ref expecteds, out _);
        while (state.HasCurrent)
        {
            ReadOnlySpan<char> ahead = state.LookAhead(ReadingLimits.LongestLine);
            if (PartGrammar.StartsWord(ahead[0]))
            {
                // most parts are words, and a run of letters always ends as a word must: the grammar need not be asked
                int length = Scanners.RunLength(ahead);
                Keep(ref parts, ref count, new Part(PartKind.Word, new TextSpan((int)state.Location, length)));
                state.Advance(length);
                _ = separators.TryParse(ref state, ref expecteds, out _);
                continue;
            }

            if (!one.TryParse(ref state, ref expecteds, out Part? part))
            {
                return false;
            }

            Keep(ref parts, ref count, part);
            _ = separators.TryParse(ref state, ref expecteds, out _);
        }

        result = new ArraySegment<Part>(parts, 0, count);
        return true;
    }

    private static void Keep(ref Part[] parts, ref int count, Part part)
    {
        if (count == parts.Length)
        {
            Array.Resize(ref parts, count * 2);
        }

        parts[count++] = part;
    }
}
