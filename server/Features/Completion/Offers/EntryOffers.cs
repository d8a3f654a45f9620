using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Heads of entries: a date with a kind, and what may follow a date.</summary>
internal static class EntryOffers
{
    private const int MostEntries = 500;
    private const int MostNames = 12;

    private static readonly string[] UsualWriters = ["owner", "technician", "the vet"];

    private static Scope<FixedWord> Kinds => NoteVocabulary.Default.Fixed("entry");

    /// <summary>New entries: today's, those of a kind that today has not yet first; yesterday's for a log written late.</summary>
    public static IEnumerable<Offer> NewEntries(LinePlace at, NoteAround note, int group)
    {
        // the date of a head that is there already is replaced alone
        if (at.Document.Syntax.Lines[at.Line].Kind == LineKind.EntryHead && !string.IsNullOrWhiteSpace(at.After))
        {
            foreach (Offer day in Days(at, group))
            {
                yield return day;
            }

            yield break;
        }

        DateOnly today = at.Document.Today;
        HashSet<string> there = [.. KindsOn(note.Document.Note, today, at.Line)];
        EntryHead? last = note.EarlierEntries().FirstOrDefault()?.Head;
        foreach (FixedWord kind in Kinds.Terms.OrderByDescending(kind => kind.Word == last?.Kind))
        {
            bool again = there.Contains(kind.Word);
            Offer head = Head(today, kind, again ? group + 1 : group, again ? "a second one for today" : kind.Definition);
            if (kind.Word == last?.Kind && last.By is { } by)
            {
                yield return head with { Text = $"{head.Text} by {by}" };
            }

            yield return head;
        }

        if (today.DayNumber > 0)
        {
            FixedWord log = Kinds.Find("log")!;
            yield return Head(today.Plus(-1), log, group + 1, "yesterday; " + log.Definition);
        }
    }

    /// <summary>What may follow the date of a head: its kind, and who wrote it.</summary>
    public static IEnumerable<Offer> InHead(LinePlace at, NoteAround note, LineSyntax read)
    {
        Token last = read.Marks.LastOrDefault(mark => mark.Span.End <= at.Start);
        if (read.Marks.FirstOrDefault(mark => mark.Kind == TokenKind.Keyword) is { Span.Length: > 0 } by && by.Span.End <= at.Start)
        {
            int from = last.Kind == TokenKind.Name ? last.Span.Start : at.Start;
            return Writers(note).Select((name, index) => new Offer(name, CompletionKind.Value, 0, "who wrote this") { From = from });
        }

        IEnumerable<Offer> kinds = read.Marks.Any(mark => mark.Kind == TokenKind.EntryKind) ? [] : ClosedOffers.OfList("entry", 0).Select(offer => offer with { Kind = CompletionKind.Entry })
            .SelectMany(offer => note.EarlierEntries().Take(MostEntries).FirstOrDefault(entry => entry.Head.Kind == offer.Text)?.Head.By is { } by && string.IsNullOrWhiteSpace(at.After) ? [offer with { Text = $"{offer.Text} by {by}" }, offer] : (Offer[])[offer]);
        IEnumerable<Offer> joins = read.Marks.Any(mark => mark.Kind == TokenKind.Keyword) ? [] : [new Offer("by", CompletionKind.Joining, 1, "who wrote this: by technician")];
        return kinds.Concat(joins);
    }

    private static Offer Head(DateOnly day, FixedWord kind, int group, string detail)
    {
        string text = $"{DayWords.Iso(day)} {kind.Word}";
        return new Offer(text, CompletionKind.Entry, group, detail) { Spellings = [kind.Word], Key = $"fixed:entry:{kind.Word}" };
    }

    private static IEnumerable<Offer> Days(LinePlace at, int group)
    {
        DateOnly today = at.Document.Today;
        for (int back = 0; back < 8 && today.DayNumber - back >= 0; back++)
        {
            DateOnly day = today.Plus(-back);
            yield return new Offer(DayWords.Iso(day), CompletionKind.Date, group, back == 0 ? $"{day.DayOfWeek}, today" : $"{day.DayOfWeek}");
        }
    }

    /// <summary>The kinds of entry that a day has; entries are written in the order of their dates, so the last ones are looked at.</summary>
    private static IEnumerable<string> KindsOn(Note note, DateOnly day, int line)
    {
        for (int index = note.Entries.Length - 1; index >= Math.Max(0, note.Entries.Length - MostEntries); index--)
        {
            if (note.Entries[index].Head.Date == day && note.Entries[index].Line != line)
            {
                yield return note.Entries[index].Head.Kind;
            }
        }
    }

    private static List<string> Writers(NoteAround note)
    {
        var names = new List<string>();
        foreach (Entry entry in note.EarlierEntries().Take(MostEntries))
        {
            if (entry.Head.By is { } by && names.Count < MostNames && !names.Contains(by))
            {
                names.Add(by);
            }
        }

        names.AddRange(UsualWriters.Except(names));
        return names;
    }

    /// <summary>The time of day for <c>now</c> and for its digits: with a dose that is due now, and alone; then the time of the line above.</summary>
    public static IEnumerable<Offer> Times(NoteAround note, TimeOnly? now, Func<ImmutableArray<MedicineOrder>> plan)
    {
        if (now is { } time)
        {
            string text = Time(time);
            yield return new Offer($"{text} ", CompletionKind.Date, 0, "the time now") { Label = text, Spellings = ["now"], WhenTyped = true };
            foreach (Offer dose in note.Day == note.Document.Today ? MedicineOffers.DueLines(note, time, plan()) : [])
            {
                yield return dose with { Text = $"{text} {dose.Text}", Group = 0, Spellings = ["now " + dose.Text], WhenTyped = true };
            }
        }

        if (note.LatestTime is { } above)
        {
            yield return new Offer($"{Time(above)} ", CompletionKind.Date, 1, "the time of the line above") { Label = Time(above), WhenTyped = true };
        }
    }

    private static string Time(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
}
