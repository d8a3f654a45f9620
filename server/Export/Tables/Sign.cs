using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Export.Tables;

/// <summary>One sign of one line.</summary>
internal sealed record Sign(NoteItem Item, LineWord Part, Described? Described, string Sense)
{
    /// <summary>The signs of all lines; a part that was looked at, skipped or not there has a row without a describing word.</summary>
    public static IEnumerable<Row<Sign>> In(ExportedNote note) =>
        from row in ExportTables.Items(note)
        from sign in Of(row.Of)
        select new Row<Sign>(row.Line, row.In, row.Time, sign);

    /// <summary>How worrying the word is in this animal; null without a word, and for one that is not there.</summary>
    public string? Level(ExportedNote note) => Described is { Sense: Grammar.Items.Sense.Present } there
        ? there.Word.For(note.Analysis.Pet.Species, note.Analysis.Pet.Male == true)?.Level.ToString().ToLowerInvariant() : null;

    private static IEnumerable<Sign> Of(NoteItem item) => item switch
    {
        ExpectFact => [],
        Skipped skipped => [new(item, skipped.Item, null, "skipped")],
        RestOk => [new(item, item.Word, null, "ok")],
        _ when !item.Words.IsEmpty || !item.Absent.IsEmpty => item.Words.Concat(item.Absent).Select(sign => new Sign(item, item.Word, sign, sign.Sense.ToString().ToLowerInvariant())),
        NotSeen => [new(item, item.Word, null, "absent")],
        _ when item.Ok => [new(item, item.Word, null, "ok")],
        _ when item.Word.Kind is WordKind.Exam or WordKind.Scan => [new(item, item.Word, null, "noted")],
        _ => [],
    };
}
