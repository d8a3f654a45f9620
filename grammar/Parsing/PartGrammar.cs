using HealthNotes.Grammar.Text;
using Pidgin;
using static Pidgin.Parser;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// The Pidgin grammar of a line's parts. It knows shapes, not words: what a part means is decided in <see cref="LineBinder"/>
/// from the vocabulary, which keeps the order of parts free and lets each message name the word it is about.
/// </summary>
/// <remarks>
/// <code>
/// parts   = { separator } , { part , { separator } } , end
/// part    = number-part | tag | word
/// number-part = [ bound ] , operand , [ sign , operand , [ sign , operand ] ]
/// operand = number , [ unit ]
/// </code>
/// </remarks>
internal static class PartGrammar
{
    private static readonly Parser<char, TextSpan> Number = new Scanners.NumberScanner();
    private static readonly Parser<char, TextSpan> OptionalUnit = OneOf(new Scanners.UnitScanner(), Nothing<TextSpan>());
    private static readonly Parser<char, TextSpan> Sign = new Scanners.OperatorScanner();
    private static readonly Parser<char, Unit> PartEnd = new Scanners.PartEndScanner();
    private static readonly Parser<char, Unit> Separators = new Scanners.SeparatorScanner();

    private static readonly Parser<char, Operand> SignedOperand = OneOf(
        Map((sign, digits, unit) => new Operand(sign, digits, unit), Sign, Number, OptionalUnit),
        Nothing<Operand>());

    private static readonly Parser<char, NumberPart> Numbers = Map(
        (digits, unit, second, third) => new NumberPart(
            TextSpan.Between(digits.Start, EndOf(digits, unit, second, third)), default, new Operand(default, digits, unit), second, third),
        Number,
        OptionalUnit,
        SignedOperand,
        SignedOperand);

    private static readonly Parser<char, Part> NumberPart = Numbers.Select<Part>(part => part);

    private static readonly Parser<char, Part> BoundedPart =
        Map<char, TextSpan, NumberPart, Part>((bound, part) => part.Behind(bound), new Scanners.BoundScanner(), Numbers);

    private static readonly Parser<char, Part> WordPart =
        new Scanners.RunScanner("a word", c => char.IsLetter(c) || c is '°' or '%' or '/').Select(span => new Part(PartKind.Word, span));

    private static readonly Parser<char, Part> TagPart =
        new Scanners.RunScanner("a @tag", c => c == '@').Select(span => new Part(PartKind.Tag, span));

    private static readonly Parser<char, Part> OnePart = OneOf(WordPart, NumberPart, TagPart, BoundedPart).Before(PartEnd);

    /// <summary>All parts of a line.</summary>
    public static readonly Parser<char, ArraySegment<Part>> Parts = new AllParts(OnePart, Separators);

    /// <summary>One part, at the very start of the text.</summary>
    public static readonly Parser<char, Part> SinglePart = OnePart;

    private static Parser<char, T> Nothing<T>()
        where T : struct => Parser<char>.Return(default(T));

    private static int EndOf(TextSpan digits, TextSpan unit, Operand second, Operand third) =>
        Math.Max(Math.Max(digits.End, unit.End), Math.Max(Math.Max(second.Digits.End, second.Unit.End), Math.Max(third.Digits.End, third.Unit.End)));
}
