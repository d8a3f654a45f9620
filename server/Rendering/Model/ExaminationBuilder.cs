using HealthNotes.Grammar.Items;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>What a line says of a part: its size, its signs, what is not there.</summary>
internal static class ExaminationBuilder
{
    /// <summary>A size and describing words in the vocabulary's spelling; what was looked for and is not there, in the writer's own words.</summary>
    public static string Seen(PageContext context, CurrentItem item) => Seen(context, item.Line, item.Item, item.Item is Examined ? item.Item.Value : null);

    /// <summary>The same of an item in a line.</summary>
    public static string Seen(PageContext context, int line, NoteItem item, NoteValue? size = null)
    {
        IEnumerable<string> all = item.Words.Concat(item.Absent).OrderBy(sign => sign.Span.Start).Select(sign => sign.Sense == Sense.Present ? sign.Word.Word.Replace('-', ' ') : Absent(context, line, sign));
        string sized = size is null ? "" : Size(context, size);
        return string.Join(", ", all.Prepend(sized).Append(item.Ok ? PageWords.Ok : "").Where(word => word.Length > 0));
    }

    /// <summary>As it was written, with what negates it: <c>no discharge</c>, <c>not red</c>, <c>swelling gone</c>.</summary>
    private static string Absent(PageContext context, int line, Described sign)
    {
        string written = sign.Span.In(context.Analysis.Note.Syntax.Lines[line].Text).ToString();
        return NoteText.Field(string.Equals(written, sign.Text, StringComparison.OrdinalIgnoreCase) ? PageWords.NotThere(sign.Text, sign.Sense == Sense.Ended) : written);
    }

    /// <summary>A size in the shown unit: all its diameters, or about what an object measures.</summary>
    public static string Size(PageContext context, NoteValue size) => size is Diameters diameters ? context.Units.Show(diameters)
        : ReadValue.Of(size) is { } value ? context.Units.Show(value) : "";

    /// <summary>A size of a lump, a wound or a node; what it was compared with is part of it.</summary>
    public static string Size(PageContext context, LumpSize size) => size.Noted.Item?.Value is { } value ? SizeAndObject(context, value) : "";

    private static string SizeAndObject(PageContext context, NoteValue value) =>
        value is LikeObject like ? $"{Size(context, value)}, {PageWords.LikeA(like.Object.Word.Replace('-', ' '))}" : Size(context, value);
}
