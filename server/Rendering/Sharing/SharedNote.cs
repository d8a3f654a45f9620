using System.Text;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Sharing;

/// <summary>
/// A note's text for a page that goes to anybody: lines that say who owns the pet and how to reach them are emptied before
/// anything is read from it, so that no part of the page can still know them. Every other line keeps its number.
/// </summary>
public static class SharedNote
{
    private const string Mark = "[left out]";
    private const int ShortestName = 5;

    private static readonly string[] Private = ["owner", "vet", "clinic", "phone", "chip"];

    /// <summary>The text without contacts, chip, telephone-like numbers, mail addresses, and pictures that were not chosen.</summary>
    /// <param name="note">The note.</param>
    /// <param name="photos">The pictures that may be shown, as the note names them.</param>
    public static string Of(Note note, IReadOnlyCollection<string> photos)
    {
        HashSet<int> emptied = [.. note.Facts<TextFact>().Where(fact => IsPrivate(fact.Fact)).Select(fact => fact.Line)];
        emptied.UnionWith(Items(note).Where(item => item.Value is Photo photo && !photos.Contains(photo.File.Text)).Select(item => item.Line));
        int opening = note.Entries.Length > 0 ? note.Entries[0].Line : note.Syntax.Lines.Length;
        emptied.UnionWith(Enumerable.Range(0, opening).Where(line => note.Syntax.Lines[line].Problems.Length > 0));
        string[] names = [.. note.Facts<TextFact>().Where(fact => IsPrivate(fact.Fact)).SelectMany(fact => fact.Fact.Text.Text.Split(',', ';'))
            .Select(name => name.Trim()).Where(IsName).Distinct().OrderByDescending(name => name.Length)];
        HashSet<int> values = [.. Items(note).Where(item => item.Value is Reading or Finding).Select(item => item.Line)];
        var text = new StringBuilder();
        for (int line = 0; line < note.Syntax.Lines.Length; line++)
        {
            text.Append(emptied.Contains(line) ? "" : PrivateText.Masked(note.Syntax.Lines[line].Text, names, Mark, values.Contains(line))).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The pictures that a note names, in the order of its lines.</summary>
    public static IEnumerable<string> PhotosOf(Note note) => Items(note).Select(item => item.Value).OfType<Photo>().Select(photo => photo.File.Text).Distinct();

    private static IEnumerable<Placed<NoteItem>> Items(Note note) => note.Entries.SelectMany(entry => entry.Items);

    private static bool IsPrivate(TextFact fact) => Private.Contains(fact.Word.Word);

    /// <summary>A contact that says something of its own; <c>the vet</c> may stand elsewhere and tells nobody anything.</summary>
    private static bool IsName(string text) => text.Length >= ShortestName && text.Any(c => char.IsUpper(c) || char.IsDigit(c));
}
