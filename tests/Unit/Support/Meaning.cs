using System.Collections;
using System.Reflection;
using System.Text;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Support;

/// <summary>
/// Writes a typed note as text without places, spellings and the order in which things were written, so that two notes can be
/// compared by what they mean.
/// </summary>
public static class Meaning
{
    public static string Of(Note note)
    {
        var text = new StringBuilder();
        foreach (Placed<NoteItem> fact in note.Opening.Facts)
        {
            text.AppendLine(Of(fact.Value));
        }

        foreach (FreeTextBlock block in note.Opening.Texts)
        {
            text.AppendLine($"> {block.Markdown} ({(block.BelongsTo is null ? "opening" : "line")})");
        }

        foreach (Entry entry in note.Entries)
        {
            text.AppendLine($"{entry.Head.Date:yyyy-MM-dd} {entry.Head.Time} {entry.Head.Kind} {entry.Head.By}");
            foreach (Placed<NoteItem> item in entry.Items)
            {
                text.AppendLine("  " + Of(item.Value));
            }

            foreach (FreeTextBlock block in entry.Texts)
            {
                text.AppendLine($"  > {block.Markdown} ({(block.BelongsTo is null ? "entry" : "line")})");
            }
        }

        return text.ToString();
    }

    public static string Of(object? value) => value switch
    {
        null => "-",
        string text => $"'{text}'",
        ITerm term => term.Word,
        TextSpan => "",
        NoteItem item => $"{item.GetType().Name} {item.Word.Word} {item.Head.Time:HH:mm}: {Of(item is NotSeen ? Without(item.Body, "none") : item.Body)}",
        ItemBody body => string.Join(' ', body.Filled.Select(slot => $"{slot.Kind}={Of(slot.Value)}").Order(StringComparer.Ordinal)),
        Described sign => $"{sign.Sense} {sign.Word.Word}",
        decimal number => number.ToString("G29", System.Globalization.CultureInfo.InvariantCulture),
        IEnumerable list => "[" + string.Join(", ", list.Cast<object>().Select(Of)) + "]",
        _ when value.GetType().Namespace?.StartsWith("HealthNotes", StringComparison.Ordinal) == true && !value.GetType().IsEnum => Members(value),
        IFormattable formattable => formattable.ToString(null, System.Globalization.CultureInfo.InvariantCulture),
        _ => value.ToString()!,
    };

    /// <summary>That something did not happen is the item's type already.</summary>
    private static ItemBody Without(ItemBody body, string word) => new([.. body.Filled.Where(slot => slot.Value is not Described sign || sign.Word.Word != word)]);

    private static string Members(object value)
    {
        IEnumerable<string> members = value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.PropertyType != typeof(TextSpan) && !IsDerived(value, property.Name))
            .Select(property => $"{property.Name}={Of(property.GetValue(value))}");
        return $"{value.GetType().Name}({string.Join(' ', members)})";
    }

    private static bool IsDerived(object value, string property) => (value, property) is
        (Site, "Name") or (Portion, "Text") or (PartialDate, "Earliest" or "Latest" or "Exact") or (Schedule, "NamesDay");
}
