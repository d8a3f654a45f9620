using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>
/// What this note's earlier lines say, as a line to write again or as the rest of one. A measured number is never repeated: an
/// offer ends before it, or goes on behind it. Doses are not offered here: they come from plans alone (<see cref="MedicineOffers"/>).
/// </summary>
internal static class AsBefore
{
    private const int MostEntries = 8;
    private const int MostLines = 60;
    private const int MostExpected = 5;
    private const int MostRests = 4;
    private const int NearMinutes = 60;
    private const int Follows = 40;
    private const int EntryBack = 4;
    private const int MinutesADay = 24 * 60;

    /// <summary>
    /// Lines of the last logs: those of this time of day first, and those that followed a line like the one above. Only these are
    /// offered before a letter is typed.
    /// </summary>
    public static IEnumerable<Offer> Lines(NoteAround note, TimeOnly? time, int group)
    {
        if (note.Entry is not { Head: { Kind: "log", Date: not null } } entry)
        {
            return [];
        }

        LineWord? above = entry.Items.LastOrDefault(item => item.Line < note.Line)?.Value.Word;
        var lines = note.EarlierEntries().Where(earlier => earlier.Head is { Kind: "log", Date: not null }).Prepend(entry).Take(MostEntries)
            .SelectMany((earlier, back) => earlier.Items.Where(item => item.Line != note.Line).Select((item, index) =>
                (Item: item.Value, item.Line, earlier.Head, Likely: back == 0 ? 0 : Likely(item.Value, index == 0 ? null : earlier.Items[index - 1].Value.Word, back))))
            .Where(line => IsRepeatable(note, line.Item) && !IsThere(line.Item))
            .Take(MostLines)
            .Select(line => (Text: Start(note.Document.Syntax.Lines[line.Line], line.Item), line.Item, line.Head, line.Likely))
            .OrderByDescending(line => line.Likely).DistinctBy(line => line.Text);
        return lines.Select((line, index) => new Offer(line.Text, LineStartOffers.KindOf(line.Item.Word), group, $"as on {DayWords.Iso(line.Head.Date!.Value)}")
        {
            Label = line.Text.TrimEnd(),
            Spellings = [.. line.Item.Word.Synonyms.Select(synonym => synonym + line.Text[line.Item.Word.Word.Length..])],
            Key = LineStartOffers.KeyOf(line.Item.Word),
            WhenTyped = line.Likely <= 0 || index >= MostExpected,
        });

        int Likely(NoteItem item, LineWord? before, int back)
        {
            int apart = time is { } at && item.Head.Time is { } then ? Apart(at, then) : MinutesADay;
            return (apart <= NearMinutes ? NearMinutes + 1 - apart : 0) + (before is not null && ReferenceEquals(before, above) ? Follows : 0) is > 0 and var likely ? likely - (back * EntryBack) : 0;
        }

        bool IsThere(NoteItem item) => entry.Items.Any(other => other.Line != note.Line && ReferenceEquals(other.Value.Word, item.Word) && other.Value.Site?.Name == item.Site?.Name
            && (other.Value.Head.Time is not { } then || (time ?? note.LatestTime) is not { } at || Apart(at, then) <= NearMinutes));
    }

    /// <summary>
    /// What stood in earlier lines of the word behind what is typed; a number that was typed takes the place of theirs. Places come
    /// from <see cref="SiteOffers"/>.
    /// </summary>
    public static IEnumerable<Offer> Rests(LineState line, int group)
    {
        if (line.Note.Entry is null || (line.Word.Kind == WordKind.Scan && !line.Has(TokenKind.Site)) || line.Word.Kind is not (WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care))
        {
            return [];
        }

        // outside of a log what is seen is looked at anew: there only the way it is measured is repeated
        if (line.Note.Entry.Head.Kind != "log" && !line.HasValue && NumberOffers.NumberBefore(line) is null)
        {
            return [];
        }

        int from = line.Read.Marks.First(mark => mark.Kind == TokenKind.LineWord).Span.End;
        string[] typed = line.At.Text[from..line.At.Cursor].TrimStart().Split(' ');
        return line.Note.Document.Record.All(line.Word.Word).SelectMany(course => course.Before(line.Note.Day, TimeOnly.MaxValue).Take(MostRests * 2))
            .Where(noted => noted.Line != line.Note.Line && noted.Item is { } item && IsRepeatable(line.Note, item))
            .OrderByDescending(noted => noted.Moment).ThenByDescending(noted => noted.Line)
            .Select(noted => (Text: Rest(typed, Words(noted)), noted.Day))
            .Where(one => one.Text is { Length: > 0 }).DistinctBy(one => one.Text)
            .Where(one => Reads(line, one.Text!)).Take(MostRests)
            .Select(one => new Offer(one.Text!, CompletionKind.Value, group, $"as on {DayWords.Iso(one.Day)}") { From = line.At.Cursor - Kept(typed[^1], one.Text!) });

        string[] Words(Noted noted)
        {
            LineSyntax earlier = Again(line.Note.Document.Syntax.Lines[noted.Line], noted.Item!);
            return earlier.Text[earlier.Marks.First(mark => mark.Kind == TokenKind.LineWord).Span.End..].TrimStart().Split(' ');
        }
    }

    private static bool Reads(LineState line, string rest) =>
        LinePlace.Read(line.At.Text[..(line.At.Cursor - Kept(line.At.Typed, rest))] + rest + line.At.After) is { Kind: LineKind.Item, Problems.Length: 0 };

    /// <summary>How much of the typed word the rest repeats.</summary>
    private static int Kept(string typed, string rest)
    {
        int end = NumberEnd(typed);
        return rest.StartsWith(typed[end..], StringComparison.OrdinalIgnoreCase) ? typed.Length - end : typed.Length;
    }

    /// <summary>The rest of the earlier words behind the typed ones; null where they differ.</summary>
    private static string? Rest(string[] typed, string[] earlier)
    {
        if (typed.Length > earlier.Length)
        {
            return null;
        }

        for (int index = 0; index < typed.Length - 1; index++)
        {
            if (!IsLike(typed[index], earlier[index]))
            {
                return null;
            }
        }

        string last = typed[^1];
        string word = earlier[typed.Length - 1];
        int typedEnd = NumberEnd(last);
        int end = typedEnd == 0 ? 0 : NumberEnd(word);
        if ((typedEnd == 0) != (end == 0) || !word[end..].StartsWith(last[typedEnd..], StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        string[] rest = [word[end..], .. earlier[typed.Length..]];
        int measured = Array.FindIndex(rest, one => NumberEnd(one) > 0);
        string text = string.Join(' ', measured < 0 ? rest : rest[..measured]);
        return typedEnd > 0 && last.Length > typedEnd && word.Length > end && text.Length == 0 ? null : text == last ? null : text;
    }

    private static bool IsLike(string typed, string earlier)
    {
        int end = NumberEnd(typed);
        int earlierEnd = NumberEnd(earlier);
        return (end > 0) == (earlierEnd > 0) && typed.AsSpan(end).Equals(earlier.AsSpan(earlierEnd), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Where the number that a word starts with ends; 0 where it starts with none.</summary>
    private static int NumberEnd(string word)
    {
        int end = 0;
        while (end < word.Length && (char.IsAsciiDigit(word[end]) || (end > 0 && word[end] is '.' or ',')))
        {
            end++;
        }

        return end;
    }

    /// <summary>Nothing with a remark, nothing that ended, since what is gone is not gone again, and no sign that is a reason to phone.</summary>
    private static bool IsRepeatable(NoteAround note, NoteItem item) => item is Reading or Examined or Finding or CareEvent or NotSeen && item.Note is null
        && LumpWords.End(item is NotSeen && item.Word.Kind != WordKind.Scan ? null : item) is null && !item.Absent.Any(sign => sign.Sense == Sense.Ended)
        && !item.Words.Any(sign => sign.Word.For(note.Species, note.Male ?? false)?.Level >= Level.Call);

    /// <summary>An earlier line in its canonical form, without its time and its comment.</summary>
    private static LineSyntax Again(LineSyntax line, NoteItem item)
    {
        Token time = line.Marks.FirstOrDefault(mark => mark.Kind == TokenKind.Time && item.Head.Time is not null);
        int start = time.Span.Length > 0 && time.Span.Start == line.Indent ? time.Span.End : line.Indent;
        int end = line.Marks[^1].Kind == TokenKind.Comment ? line.Marks[^1].Span.Start : line.Text.Length;
        return LinePlace.Read(NoteFormatter.FormatLines(NoteSyntax.Parse(line.Text[start..end].Trim()), 0).First());
    }

    /// <summary>The line up to the first number that was measured, and a blank where it lacks one.</summary>
    private static string Start(LineSyntax line, NoteItem item)
    {
        LineSyntax again = Again(line, item);
        Token measured = item.Value is null or Portion ? default : again.Marks.FirstOrDefault(mark => mark.Kind == TokenKind.Value && NumberEnd(mark.Span.In(again.Text).ToString()) > 0);
        string start = measured.Span.Length == 0 ? again.Text : again.Text[..measured.Span.Start].TrimEnd();
        return LinePlace.Read(start).Problems.Length > 0 ? start + " " : start;
    }

    private static int Apart(TimeOnly one, TimeOnly other) => (int)Math.Abs((one.ToTimeSpan() - other.ToTimeSpan()).TotalMinutes);
}
