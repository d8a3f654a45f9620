using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Syntax;

/// <summary>Something in a line that could not be read.</summary>
/// <param name="Rule">Its stable name.</param>
/// <param name="Span">The exact characters meant, within the line.</param>
/// <param name="Message">What is wrong and what was expected, in plain words.</param>
/// <param name="Nearest">The known word that was most likely meant, or null.</param>
/// <param name="Corrected">The whole line as it would be right, where that is certain; else null.</param>
public sealed record Problem(string Rule, TextSpan Span, string Message, string? Nearest = null, string? Corrected = null);

/// <summary>The names of the problems that reading can find. A name is never reused.</summary>
public static class ProblemRules
{
    /// <summary>The line starts with no known word.</summary>
    public const string UnknownLine = "unknown-line";

    /// <summary>A word that is not known in its place.</summary>
    public const string UnknownWord = "unknown-word";

    /// <summary>The line lacks what it needs.</summary>
    public const string Missing = "missing";

    /// <summary>Characters that fit no form of value or word.</summary>
    public const string Unreadable = "unreadable";

    /// <summary>A number that cannot be right.</summary>
    public const string BadNumber = "bad-number";

    /// <summary>A measure without its unit.</summary>
    public const string MissingUnit = "missing-unit";

    /// <summary>A unit that does not fit, or is not known.</summary>
    public const string WrongUnit = "wrong-unit";

    /// <summary>A value of the wrong form for its line.</summary>
    public const string WrongValue = "wrong-value";

    /// <summary>The same thing said twice in one line.</summary>
    public const string SaidTwice = "said-twice";

    /// <summary>A site that cannot exist.</summary>
    public const string ImpossibleSite = "impossible-site";

    /// <summary>A date that is not in the calendar, or is written another way.</summary>
    public const string BadDate = "bad-date";

    /// <summary>A time of day that does not exist.</summary>
    public const string BadTime = "bad-time";

    /// <summary>A line that stands where it has no meaning.</summary>
    public const string Misplaced = "misplaced";

    /// <summary>A negation or an end whose reach is not clear.</summary>
    public const string OpenNegation = "open-negation";

    /// <summary>A line too long to be read word by word.</summary>
    public const string LineTooLong = "line-too-long";

    /// <summary>A mark that a version control system puts between two versions of the lines around it.</summary>
    public const string Conflict = "conflict";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
        [UnknownLine, UnknownWord, Missing, Unreadable, BadNumber, MissingUnit, WrongUnit, WrongValue, SaidTwice, ImpossibleSite, BadDate, BadTime, Misplaced, OpenNegation, LineTooLong, Conflict];
}
