using HealthNotes.Grammar.Text;
using Pidgin;

namespace HealthNotes.Grammar.Scanning;

/// <summary>
/// The smallest Pidgin parsers of the notation. They look ahead and hand back a span instead of building strings,
/// so a line costs no allocation until its parts are known; and they fail without taking anything, so they need no <c>Try</c>.
/// </summary>
internal static class Scanners
{
    private const int LongestDate = 11;

    public static bool IsBlank(char c) => c is ' ' or '\t' or '\u00a0' || char.IsWhiteSpace(c);

    public static bool IsDigit(char c) => c is >= '0' and <= '9';

    /// <summary>A comma or semicolon that ends a part: people write lists with commas.</summary>
    public static bool IsSeparator(char c) => c is ',' or ';';

    /// <summary>
    /// True where a part ends without a blank: before a comma or a bracket, before a colon or a full stop that a blank or the end
    /// follows (<c>3/4: slowly</c>, <c>limping.</c>), and at a pictograph, which a phone's keyboard adds.
    /// </summary>
    public static bool IsSeparator(ReadOnlySpan<char> text, int at) =>
        IsSeparator(text[at]) || text[at] is '(' or ')' or '[' or ']'
        || (text[at] is ':' or '.' or '!' or '…' && (at + 1 == text.Length || IsBlank(text[at + 1]) || IsSeparator(text[at + 1]) || text[at + 1] is '!' or '.' or '?'))
        || IsPictograph(text[at]);

    private static bool IsPictograph(char c) => c >= '\u2190'
        && (char.IsSurrogate(c) || c is '\uFE0F' or '\u200D' || char.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.OtherSymbol);

    /// <summary>Base of the scanners: measures what stands here, then takes it.</summary>
    internal abstract class Scanner(string label) : Parser<char, TextSpan>
    {
        private readonly Expected<char> expected = new(label);

        /// <summary>How many of the characters ahead belong to this token; 0 or less when none does.</summary>
        protected abstract int Measure(ReadOnlySpan<char> ahead);

        public sealed override bool TryParse(ref ParseState<char> state, ref PooledList<Expected<char>> expecteds, out TextSpan result)
        {
            int start = (int)state.Location;
            ReadOnlySpan<char> ahead = state.LookAhead(ReadingLimits.LongestLine);
            int length = Measure(ahead);
            if (length <= 0)
            {
                result = default;
                state.SetError(ahead.IsEmpty ? Maybe.Nothing<char>() : Maybe.Just(ahead[0]), ahead.IsEmpty, state.Location, null);
                expecteds.Add(expected);
                return false;
            }

            state.Advance(length);
            result = new TextSpan(start, length);
            return true;
        }
    }

    /// <summary><c>38</c>, <c>38.6</c>, <c>38,6</c>.</summary>
    internal sealed class NumberScanner() : Scanner("a number")
    {
        protected override int Measure(ReadOnlySpan<char> ahead) => Length(ahead);

        /// <summary>How long the number is that starts here; 0 where none does.</summary>
        public static int Length(ReadOnlySpan<char> ahead)
        {
            int whole = Digits(ahead);
            int fraction = whole + (whole > 0 && whole + 1 < ahead.Length && ahead[whole] == ' ' ? 1 : 0);
            if (fraction < ahead.Length && NumberText.IsFraction(ahead[fraction]))
            {
                // ½, 2½ and 2 ½, as a phone writes them
                return fraction + 1;
            }

            if (whole == 0 && ahead.Length > 1 && ahead[0] == '.' && IsDigit(ahead[1]))
            {
                return 1 + Digits(ahead[1..]);
            }

            if (whole == 0 || whole + 1 >= ahead.Length || ahead[whole] is not ('.' or ','))
            {
                return whole;
            }

            int decimals = Digits(ahead[(whole + 1)..]);
            return decimals == 0 ? whole : whole + 1 + decimals;
        }

        private static int Digits(ReadOnlySpan<char> text)
        {
            int length = text.IndexOfAnyExceptInRange('0', '9');
            return length < 0 ? text.Length : length;
        }
    }

    /// <summary><c>20.10.2026</c>: three numbers and dots, which are a date and nothing else.</summary>
    internal sealed class DottedDateScanner : Parser<char, NumberPart>
    {
        private static readonly Expected<char> Label = new("a date");

        public override bool TryParse(ref ParseState<char> state, ref PooledList<Expected<char>> expecteds, out NumberPart result)
        {
            int start = (int)state.Location;
            ReadOnlySpan<char> ahead = state.LookAhead(LongestDate);
            if (Piece(ahead, 0, '.') is not (> 0 and var day) || Piece(ahead, day + 1, '.') is not (> 0 and var month) || Piece(ahead, day + month + 2, '\0') is not (> 0 and var year) || year is not (2 or 4))
            {
                result = null!;
                state.SetError(ahead.IsEmpty ? Maybe.Nothing<char>() : Maybe.Just(ahead[0]), ahead.IsEmpty, state.Location, null);
                expecteds.Add(Label);
                return false;
            }

            int length = day + month + year + 2;
            state.Advance(length);
            result = new NumberPart(new TextSpan(start, length), default, new Operand(default, new TextSpan(start, day), default),
                new Operand(new TextSpan(start + day, 1), new TextSpan(start + day + 1, month), default),
                new Operand(new TextSpan(start + day + month + 1, 1), new TextSpan(start + day + month + 2, year), default));
            return true;
        }

        /// <summary>How many digits stand before the mark, or before the end; 0 where something else does.</summary>
        private static int Piece(ReadOnlySpan<char> text, int at, char mark)
        {
            int end = at;
            while (end < text.Length && IsDigit(text[end]))
            {
                end++;
            }

            bool whole = mark == '\0' ? end == text.Length || IsBlank(text[end]) || IsSeparator(text, end) : end < text.Length && text[end] == mark && end - at <= 2;
            return whole ? end - at : 0;
        }
    }

    /// <summary>A unit right after a number: <c>kg</c>, <c>mmol/L</c>, <c>/min</c>, <c>fl-oz</c>, <c>°C</c>, <c>%</c>.</summary>
    internal sealed class UnitScanner() : Scanner("a unit")
    {
        protected override int Measure(ReadOnlySpan<char> ahead) => Length(ahead);

        /// <summary>How long the unit is that starts here; 0 where none does.</summary>
        public static int Length(ReadOnlySpan<char> ahead)
        {
            int length = 0;
            while (length < ahead.Length && (char.IsLetter(ahead[length]) || ahead[length] is '%' or '°' or '"' or '”' or '″' or '“' or '#'
                || (ahead[length] is '/' or '-' && length + 1 < ahead.Length && char.IsLetter(ahead[length + 1]))))
            {
                // 12x9mm and 12mmx9mm: the x belongs to the next diameter
                if (OperatorScanner.IsTimes(ahead[length]) && length + 1 < ahead.Length && IsDigit(ahead[length + 1]))
                {
                    break;
                }

                length++;
            }

            return length;
        }
    }

    /// <summary>A sign between two numbers, with the blanks round it where they are allowed: <c>/</c>, <c>x</c>, <c>-</c>, <c>:</c>.</summary>
    internal sealed class OperatorScanner(bool blanks) : Scanner("a sign between numbers (/ x - :)")
    {
        public static bool IsTimes(char c) => c is 'x' or 'X' or '×' or '*';

        protected override int Measure(ReadOnlySpan<char> ahead) => Length(ahead, blanks);

        /// <summary>How long the sign is that starts here, with blanks round it where they are allowed; 0 where none does.</summary>
        public static int Length(ReadOnlySpan<char> ahead, bool blanks)
        {
            int at = Blanks(ahead);
            if (at >= ahead.Length || !(IsTimes(ahead[at]) || ahead[at] is '/' or '-' or '–' or ':'))
            {
                return 0;
            }

            int next = at + 1 + Blanks(ahead[(at + 1)..]);
            return next < ahead.Length && IsDigit(ahead[next]) && (blanks || next == 1) ? next : 0;
        }

        private static int Blanks(ReadOnlySpan<char> text)
        {
            int length = 0;
            while (length < text.Length && IsBlank(text[length]))
            {
                length++;
            }

            return length;
        }
    }

    /// <summary>A run of characters up to the next blank or comma.</summary>
    internal sealed class RunScanner(string label, Func<char, bool> starts) : Scanner(label)
    {
        protected override int Measure(ReadOnlySpan<char> ahead)
        {
            return ahead.IsEmpty || !starts(ahead[0]) ? 0 : RunLength(ahead);
        }
    }

    /// <summary>How long the run is that starts here: up to the next blank, comma or mark.</summary>
    public static int RunLength(ReadOnlySpan<char> ahead)
    {
        int length = 1;
        while (length < ahead.Length && (char.IsAsciiLetterOrDigit(ahead[length]) || (!IsBlank(ahead[length]) && !IsSeparator(ahead, length) && ahead[length] is not ('?' or '<' or '>'))))
        {
            length++;
        }

        return length;
    }

    /// <summary>One character that says about, below or above, with blanks after it.</summary>
    internal sealed class BoundScanner() : Scanner("~, < or >")
    {
        protected override int Measure(ReadOnlySpan<char> ahead)
        {
            if (ahead.IsEmpty || ahead[0] is not ('~' or '<' or '>' or '≈' or '≤' or '≥'))
            {
                return 0;
            }

            int length = 1;
            while (length < ahead.Length && (IsBlank(ahead[length]) || ahead[length] == '='))
            {
                length++;
            }

            return length;
        }
    }

    /// <summary>Demands that a part ends here: a blank, a comma before a blank, or the end of the line.</summary>
    internal sealed class PartEndScanner : Parser<char, Unit>
    {
        private static readonly Expected<char> Blank = new("a blank");

        /// <summary>True where a part may end before this text.</summary>
        public static bool Ends(ReadOnlySpan<char> rest) => rest.IsEmpty || IsBlank(rest[0]) || IsSeparator(rest, 0) || rest[0] is '?' or '<' or '>';

        public override bool TryParse(ref ParseState<char> state, ref PooledList<Expected<char>> expecteds, out Unit result)
        {
            result = Unit.Value;
            ReadOnlySpan<char> ahead = state.LookAhead(2);
            if (Ends(ahead))
            {
                return true;
            }

            state.SetError(Maybe.Just(state.Current), false, state.Location, null);
            expecteds.Add(Blank);
            return false;
        }
    }
}
