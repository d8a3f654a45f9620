using HealthNotes.Grammar.Text;
using Pidgin;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Cuts a line into parts: the whole line at once where all is well, part by part where something is not.</summary>
internal static class PartReader
{
    /// <summary>
    /// The parts of <paramref name="line"/> before <paramref name="end"/>. What fits no shape becomes an unreadable part
    /// up to the next blank, and reading goes on behind it: one odd part costs itself alone.
    /// </summary>
    /// <param name="line">The line.</param>
    /// <param name="end">Where its content ends.</param>
    /// <param name="blanksInNumbers">
    /// True to read <c>12 x 9 mm</c> as one part. Not so where a remark may follow a number: in <c>5mg - 3 hours late</c>
    /// the <c>-</c> starts the remark; nor where a number may be a count of times: <c>2 x 30s</c> is two times and half a minute.
    /// </param>
    public static ArraySegment<Part> Read(string line, int end, bool blanksInNumbers)
    {
        PartGrammar grammar = blanksInNumbers ? PartGrammar.Loose : PartGrammar.Tight;
        Result<char, ArraySegment<Part>> all = grammar.Parts.Parse(line.AsSpan(0, end));
        return all.Success ? all.Value : OneByOne(grammar, line, end);
    }

    private static ArraySegment<Part> OneByOne(PartGrammar grammar, string line, int end)
    {
        var parts = new List<Part>();
        int at = 0;
        while (true)
        {
            while (at < end && (Scanners.IsBlank(line[at]) || Scanners.IsSeparator(line.AsSpan(0, end), at)))
            {
                at++;
            }

            if (at == end)
            {
                return parts.ToArray();
            }

            Result<char, Part> one = grammar.SinglePart.Parse(line.AsSpan(at, end - at));
            Part part = one.Success ? one.Value.Moved(at) : Unreadable(line, at, end, one.Error!);
            parts.Add(part);
            at = part.Span.End;
        }
    }

    private static UnreadablePart Unreadable(string line, int start, int end, ParseError<char> error)
    {
        int stoppedAt = start + (int)error.ErrorOffsetLong;
        int stop = start;
        while (stop < end && !Scanners.IsBlank(line[stop]))
        {
            stop++;
        }

        // a number with blanks round its sign may have been read past the first blank before it broke
        while (stop < end && stop <= stoppedAt && !Scanners.IsBlank(line[stop]))
        {
            stop++;
        }

        return new UnreadablePart(
            TextSpan.Between(start, Math.Max(stop, start + 1)),
            [.. error.Expected.Select(e => e.Label ?? "").Where(label => label.Length > 0).Order(StringComparer.Ordinal).Distinct()],
            Math.Min(stoppedAt, end));
    }
}
