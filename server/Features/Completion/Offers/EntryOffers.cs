using System.Globalization;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

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
        foreach (FixedWord kind in Kinds.Terms)
        {
            bool again = there.Contains(kind.Word);
            yield return Head(today, kind, again ? group + 1 : group, again ? "a second one for today" : kind.Definition);
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

        IEnumerable<Offer> kinds = read.Marks.Any(mark => mark.Kind == TokenKind.EntryKind) ? [] : ClosedOffers.OfList("entry", 0).Select(offer => offer with { Kind = CompletionKind.Entry });
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

    /// <summary>The time of day, for <c>now</c>.</summary>
    public static IEnumerable<Offer> Now(TimeOnly? now) => now is not { } time ? [] :
        [new Offer(time.ToString("HH:mm", CultureInfo.InvariantCulture) + " ", CompletionKind.Date, 0, "the time now") { Label = "now", Spellings = ["now"], WhenTyped = true }];
}
