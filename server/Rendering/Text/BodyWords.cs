using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the body map and its table.</content>
internal static partial class PageWords
{
    public const string Number = "No.";
    public const string NothingMarked = "Nothing is marked here.";
    public const string LeftSide = "its left";
    public const string RightSide = "its right";
    public const string Sampled = "sampled";

    public static string LikeA(string thing) => $"like {(thing[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an" : "a")} {thing}";

    public static string NameOf(Species species, BodyView view)
    {
        string animal = species == Species.Cat ? "cat" : "dog";
        return view switch
        {
            BodyView.Left => $"The {animal}'s left side",
            BodyView.Right => $"The {animal}'s right side",
            BodyView.Above => $"The {animal} from above",
            _ => $"The {animal} from below, on its back",
        };
    }

    public static string MarkInWords(int number, string kind, string place, string size) =>
        $"{number}: {kind.ToLowerInvariant()}, {place}{(size.Length == 0 ? "" : $", {size}")}";

    public static string NotOnMap(IReadOnlyList<int> numbers) =>
        numbers.Count == 1 ? $"Number {numbers[0]} is not on the map: its note does not say enough of where." : $"Not on the map, since their notes do not say enough of where: numbers {string.Join(", ", numbers)}.";

    public static string MapLeftOut(int count) => $"The map shows the first of them; {count:N0} more are in the notes.";

    public static string ToldUnder(int problem) => problem == 0 ? "see above, no longer there" : $"see problem {problem}";

    public static string NoLongerThere(IReadOnlyList<string> gone) => $"Earlier: {string.Join("; ", gone)}.";

    public static string GoneOn(string title, string word, string day) => $"{title} ({word} {day})";
}

/// <summary>From where the animal is seen.</summary>
internal enum BodyView
{
    /// <summary>Its left side.</summary>
    Left,

    /// <summary>Its right side.</summary>
    Right,

    /// <summary>From above.</summary>
    Above,

    /// <summary>From below, as it lies on its back.</summary>
    Below,
}
