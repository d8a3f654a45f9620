using HealthNotes.Grammar.Text;
using Pidgin;

namespace HealthNotes.Grammar.Scanning;

/// <summary>Cuts a line into parts: the whole line at once where all is well, part by part where something is not.</summary>
internal static class PartReader
{
    private const int UsualCount = 4;

    /// <summary>
    /// The parts of <paramref name="line"/> before <paramref name="end"/>. What fits no shape becomes an unreadable part
    /// up to the next blank, and reading goes on behind it: one odd part costs itself alone. A word and a number with its unit are
    /// most of what is written; they are measured here, and the grammar is asked for all others.
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
        var parts = new Part[UsualCount];
        int count = 0;
        int at = 0;
        while (true)
        {
            ReadOnlySpan<char> content = line.AsSpan(0, end);
            while (at < end && (Scanners.IsBlank(line[at]) || Scanners.IsSeparator(content, at)))
            {
                at++;
            }

            if (at == end)
            {
                return new ArraySegment<Part>(parts, 0, count);
            }

            if (count == parts.Length)
            {
                Array.Resize(ref parts, count * 2);
            }

            Part part = line[at] == '?' && at + 1 < end && char.IsLetter(line[at + 1]) ? new Part(PartKind.Word, new TextSpan(at, 1)) // "?effusion": in doubt
                : PartGrammar.StartsWord(line[at]) ? new Part(PartKind.Word, new TextSpan(at, Scanners.RunLength(content[at..])))
                : SingleNumber(content, at, blanksInNumbers) ?? Parsed(grammar, line, at, end);
            parts[count++] = part;
            at = part.Span.End;
        }
    }

    private static Part Parsed(PartGrammar grammar, string line, int at, int end)
    {
        Result<char, Part> one = grammar.SinglePart.Parse(line.AsSpan(at, end - at));
        return one.Success ? one.Value.Moved(at) : Fraction(line, at, end) ?? (Part)Unreadable(line, at, end, one.Error!);
    }

    /// <summary>The first fraction of <c>1/2 x 3/4 in</c>, which is longer than a number with three operands; null for all else.</summary>
    private static NumberPart? Fraction(string line, int at, int end) =>
        PartGrammar.Tight.SinglePart.Parse(line.AsSpan(at, end - at)) is { Success: true, Value: NumberPart { First.Unit.Length: 0, Third.Exists: false } part }
            && part.Moved(at) is NumberPart fraction && fraction.Second.Sign(line) == '/' && line.AsSpan(fraction.Span.End).TrimStart() is ['x' or 'X' or '×' or '*', ' ', ..]
                ? fraction : null;

    /// <summary>One number with its unit, without a bound and with no sign behind it: <c>38.6C</c>, <c>12</c>; null for all else.</summary>
    private static NumberPart? SingleNumber(ReadOnlySpan<char> content, int at, bool blanksInNumbers)
    {
        ReadOnlySpan<char> ahead = content[at..];
        int digits = Scanners.NumberScanner.Length(ahead);
        if (digits <= 0)
        {
            return null;
        }

        int unit = Scanners.UnitScanner.Length(ahead[digits..]);
        ReadOnlySpan<char> rest = ahead[(digits + unit)..];
        return Scanners.PartEndScanner.Ends(rest) && Scanners.OperatorScanner.Length(rest, blanksInNumbers) <= 0
            ? new NumberPart(new TextSpan(at, digits + unit), default, new Operand(default, new TextSpan(at, digits), unit > 0 ? new TextSpan(at + digits, unit) : default), default, default)
            : null;
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
