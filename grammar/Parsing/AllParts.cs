using Pidgin;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// A Pidgin parser that repeats one part up to the end of the input. Pidgin's own <c>Many</c> is not used: its generic
/// types nest without end, which the native compiler refuses (IL3054), and it drops what else would have fitted.
/// </summary>
internal sealed class AllParts(Parser<char, Part> one, Parser<char, Unit> separators) : Parser<char, Part[]>
{
    public override bool TryParse(ref ParseState<char> state, ref PooledList<Expected<char>> expecteds, out Part[] result)
    {
        result = [];
        var parts = new List<Part>(4);
        _ = separators.TryParse(ref state, ref expecteds, out _);
        while (state.HasCurrent)
        {
            if (!one.TryParse(ref state, ref expecteds, out Part? part))
            {
                return false;
            }

            parts.Add(part);
            _ = separators.TryParse(ref state, ref expecteds, out _);
        }

        result = [.. parts];
        return true;
    }
}
