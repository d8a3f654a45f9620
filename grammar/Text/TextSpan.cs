namespace HealthNotes.Grammar.Text;

/// <summary>A stretch of one line: from <paramref name="Start"/>, <paramref name="Length"/> long, both in UTF-16 units counted from the line's first character (0).</summary>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The offset just after the last character.</summary>
    public int End => Start + Length;

    /// <summary>The span from <paramref name="start"/> up to, not including, <paramref name="end"/>.</summary>
    public static TextSpan Between(int start, int end) => new(start, end - start);

    /// <summary>The stretch of <paramref name="line"/> that this span names.</summary>
    public ReadOnlySpan<char> In(string line) => line.AsSpan(Start, Length);
}
