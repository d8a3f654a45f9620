using HealthNotes.Analysis.Lumps;
using HealthNotes.Analysis.Readings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>The parts that were looked at, head to tail.</summary>
internal static class ExaminationBuilder
{
    public static Examination Build(PageContext context)
    {
        DatedEntry? check = context.Period.Check;
        ILookup<bool, CurrentItem> parts = context.Items.Where(item => item.Item is Examined or RestOk)
            .ToLookup(item => context.Period.IsCheck(item.Entry));
        List<ExaminedPart> inCheck = [.. parts[true].OrderBy(item => item.Item.Word.Order).ThenBy(item => item.Line).Select(item => Part(context, item))];
        List<ExaminedPart> since = [.. parts[false].Select(item => Part(context, item))];
        return new Examination(
            check is not null, check?.Day,
            Shown<ExaminedPart>.First(inCheck, PageLimits.TableRows),
            Shown<ExaminedPart>.Last(since, PageLimits.TableRows));
    }

    /// <summary>Describing words and a size, in the vocabulary's spelling.</summary>
    public static string Seen(PageContext context, IEnumerable<Described> words, bool ok = false, NoteValue? size = null)
    {
        IEnumerable<string> all = words.Select(word => word.Word.Word.Replace('-', ' '));
        string sized = size is null ? "" : Size(context, size);
        return string.Join(", ", all.Prepend(sized).Append(ok ? PageWords.Ok : "").Where(word => word.Length > 0));
    }

    /// <summary>A size in the shown unit: all its diameters, or about what an object measures.</summary>
    public static string Size(PageContext context, NoteValue size) => size is Diameters diameters ? context.Units.Show(diameters)
        : ReadValue.Of(size) is { } value ? context.Units.Show(value) : "";

    /// <summary>A size of a lump, a wound or a node; what it was compared with is part of it.</summary>
    public static string Size(PageContext context, LumpSize size) => size.Noted.Item switch
    {
        Finding { Size: { } value } => SizeAndObject(context, value),
        Examined { Size: { } value } => SizeAndObject(context, value),
        _ => "",
    };

    private static string SizeAndObject(PageContext context, NoteValue value) =>
        value is LikeObject like ? $"{Size(context, value)}, like {like.Object.Word.Replace('-', ' ')}" : Size(context, value);

    private static ExaminedPart Part(PageContext context, CurrentItem item)
    {
        (string part, string place, string seen) = item.Item switch
        {
            Examined examined => (Wording.NameOf(examined.Word.Word), SiteWords.Of(examined.Site, examined.Tag), Seen(context, examined.Words, examined.Ok, examined.Size)),
            _ => (PageWords.EverythingElse, "", PageWords.Ok),
        };
        string written = context.Written(item.Line).Text;
        bool inOtherWords = written != ItemPrinter.Print(item.Item);
        return new ExaminedPart(item.Entry.Day, item.Time, part, place, seen, inOtherWords ? written : "", context.LevelOf(item.Line));
    }
}
