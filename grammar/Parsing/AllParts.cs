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
            if (!one.TryParse(ref state, ref expecteds, out Part? part))
            {
                return false;
            }

            if (count == parts.Length)
            {
                Array.Resize(ref parts, count * 2);
            }

            parts[count++] = part;
            _ = separators.TryParse(ref state, ref expecteds, out _);
        }

        result = new ArraySegment<Part>(parts, 0, count);
        return true;
    }
}
