using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Text;
using Pidgin;
using static Pidgin.Parser;

namespace HealthNotes.Grammar.Scanning;

/// <summary>
/// The Pidgin grammar of a line's parts. It knows shapes, not words: what a part means is decided in <see cref="ItemReader"/>
/// from the vocabulary, which keeps the order of parts free and lets each message name the word it is about.
/// </summary>
/// <remarks>
/// <code>
/// parts   = { separator } , { part , { separator } } , end
/// part    = number-part | tag | word
/// number-part = [ bound ] , ( dotted-date | operand , [ sign , operand , [ sign , operand ] ] )
/// operand = number , [ unit ]
/// </code>
/// </remarks>
internal sealed class PartGrammar
{
    /// <summary>Blanks may stand round the sign between two numbers.</summary>
    public static readonly PartGrammar Loose = new(blanksInNumbers: true);

    /// <summary>A number ends at the first blank.</summary>
    public static readonly PartGrammar Tight = new(blanksInNumbers: false);

    private PartGrammar(bool blanksInNumbers)
    {
        Parser<char, TextSpan> number = new Scanners.NumberScanner();
        Parser<char, TextSpan> optionalUnit = OneOf(new Scanners.UnitScanner(), Nothing<TextSpan>());
        Parser<char, TextSpan> sign = new Scanners.OperatorScanner(blanksInNumbers);
        Parser<char, Unit> partEnd = new Scanners.PartEndScanner();

        Parser<char, Operand> signedOperand = OneOf(
            Map((sign, digits, unit) => new Operand(sign, digits, unit), sign, number, optionalUnit),
            Nothing<Operand>());

        Parser<char, NumberPart> numbers = Map(
            (digits, unit, second, third) => new NumberPart(
                TextSpan.Between(digits.Start, EndOf(digits, unit, second, third)), default, new Operand(default, digits, unit), second, third),
            number,
            optionalUnit,
            signedOperand,
            signedOperand);

        numbers = OneOf(new Scanners.DottedDateScanner(), numbers);
        Parser<char, Part> numberPart = numbers.Select<Part>(part => part);

        Parser<char, Part> boundedPart =
            Map<char, TextSpan, NumberPart, Part>((bound, part) => part.Behind(bound), new Scanners.BoundScanner(), numbers);

        Parser<char, Part> wordPart =
            new Scanners.RunScanner("a word", StartsWord).Select(span => new Part(PartKind.Word, span));

        Parser<char, Part> tagPart =
            new Scanners.RunScanner("a @tag", c => c == '@').Select(span => new Part(PartKind.Tag, span));

        SinglePart = OneOf(wordPart, numberPart, tagPart, boundedPart).Before(partEnd);
    }

    /// <summary>One part, at the very start of the text.</summary>
    public Parser<char, Part> SinglePart { get; }

    /// <summary>True for a character that a word starts with.</summary>
    public static bool StartsWord(char c) => char.IsLetter(c) || c is '°' or '%' or '/' or '"' or '?' or '&' or '+' or '=';

    private static Parser<char, T> Nothing<T>()
        where T : struct => Parser<char>.Return(default(T));

    private static int EndOf(TextSpan digits, TextSpan unit, Operand second, Operand third) =>
        Math.Max(Math.Max(digits.End, unit.End), Math.Max(Math.Max(second.Digits.End, second.Unit.End), Math.Max(third.Digits.End, third.Unit.End)));
}
