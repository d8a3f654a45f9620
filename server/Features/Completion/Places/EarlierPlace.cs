using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Features.Completion.Places;

/// <summary>A place that a word was used with before, by the last line about it.</summary>
/// <param name="Line">The line.</param>
/// <param name="Site">Its site.</param>
internal sealed record EarlierPlace(Noted Line, Site Site)
{
    /// <summary>The most places that are looked for.</summary>
    private const int MostPlaces = 40;

    /// <summary>The tag without its <c>@</c>; null when there is none.</summary>
    public string? Tag => Line.Item!.Tag?.Name;

    /// <summary>The site and the tag, as they are written.</summary>
    public string Name => NameOf(Line.Item!);

    /// <summary>True when it is there no longer.</summary>
    public bool Gone => LumpWords.End(Line.Item) is not null;

    /// <summary>How it was, and when: <c>12mm on 2026-10-04</c>.</summary>
    public string Last => Gone ? $"noted as gone on {DayWords.Iso(Line.Day)}"
        : Line.Item!.Value is { } size and not Score ? $"{ValuePrinter.Print(size)} on {DayWords.Iso(Line.Day)}"
        : $"last noted on {DayWords.Iso(Line.Day)}";

    /// <summary>
    /// The places up to the line, the latest first. A check measures each once: those that its entry names already are left out
    /// there, but for a line that points back at them.
    /// </summary>
    public static IEnumerable<EarlierPlace> Of(NoteAround note, LineWord word, bool pointsBack)
    {
        bool again = pointsBack || note.Entry?.Head.Kind != "check";
        HashSet<string> here = again ? [] : [.. note.OtherItems().Where(item => ReferenceEquals(item.Value.Word, word)).Select(item => NameOf(item.Value))];
        return note.Document.Record.All(word.Word)
            .Select(course => course.Before(note.Day, TimeOnly.MaxValue).FirstOrDefault(line => line.Line != note.Line && (again || !ReferenceEquals(line.Head, note.Entry?.Head))))
            .OfType<Noted>()
            .Where(line => line.Item?.Site is not null && !here.Contains(NameOf(line.Item)))
            .OrderByDescending(line => line.Moment).ThenByDescending(line => line.Line)
            .Take(MostPlaces)
            .Select(line => new EarlierPlace(line, line.Item!.Site!));
    }

    private static string NameOf(NoteItem item) => item.Tag is { } tag ? $"{item.Site?.Name} @{tag.Name}" : item.Site?.Name ?? "";
}
