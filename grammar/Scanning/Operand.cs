using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Scanning;

/// <summary>A number with what stands before it and after it: <c>/15s</c> in <c>18/15s</c>.</summary>
internal readonly record struct Operand(TextSpan SignSpan, TextSpan Digits, TextSpan Unit)
{
    public bool Exists => Digits.Length > 0;

    /// <summary>The sign itself, without the blanks round it: <c>/</c>, <c>x</c>, <c>-</c>, <c>:</c> or none (<c>\0</c>).</summary>
    public char Sign(string line) => SignSpan.Length == 0 ? '\0' : line.AsSpan(SignSpan.Start, SignSpan.Length).Trim()[0] switch
    {
        'X' or '×' or '*' => 'x',
        '–' => '-',
        var sign => sign,
    };

    public Operand Moved(int by) => new(Moved(SignSpan, by), Moved(Digits, by), Moved(Unit, by));

    private static TextSpan Moved(TextSpan span, int by) => span with { Start = span.Start + by };
}
