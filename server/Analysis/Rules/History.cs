using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>Where and when a lump was noted, and its size as written.</summary>
public sealed record NotedLump(int Line, DateOnly? Day, string? Size);

/// <summary>A describing word noted of a part at a visit to the clinic, with its line and day.</summary>
public sealed record NotedSign(string Part, string? Site, string Word, int Line, DateOnly Day);

/// <summary>Where and when a seizure was noted.</summary>
public sealed record NotedSeizure(int Line, int Minute, DateTime? When);

/// <summary>
/// The entries of a note in the order of their days, by what was noted. Each part is put in order when it is first asked
/// for: most edits ask for none.
/// </summary>
internal sealed class History(ImmutableArray<EntryAnalysis> entries)
{
    private readonly Dictionary<string, Dictionary<(string?, string?, string), List<NoteReading>>> readings = [];
    private Dictionary<(string, string?), NotedLump>? lumps;
    private List<NotedSeizure>? seizures;
    private ILookup<(string, string?, string), NotedSign>? visitSigns;

    /// <summary>Up to <paramref name="count"/> readings of the same kind before this one, the latest first.</summary>
    public IReadOnlyList<NoteReading> Before(NoteReading reading, int count)
    {
        List<NoteReading> series = SeriesOf(reading.What)[KindOf(reading)];
        int at = series.BinarySearch(reading, ByTime.Order);
        return [.. series.Take(at).Reverse().Take(count)];
    }

    /// <summary>Where a lump was first noted.</summary>
    public NotedLump? FirstLump(string site, string? tag) => (lumps ??= FirstLumps()).GetValueOrDefault((site, tag));

    /// <summary>What tells several seizures of one line apart.</summary>
    public static int MinuteOf(CareEvent seizure) => (int)((seizure.Head.Time?.Ticks ?? 0) / TimeSpan.TicksPerMinute);

    /// <summary>The seizure before the one in this line.</summary>
    public NotedSeizure? SeizureBefore(int line, int minute)
    {
        seizures ??= Seizures();
        int at = seizures.FindIndex(seizure => seizure.Line == line && seizure.Minute == minute);
        return at > 0 ? seizures[at - 1] : null;
    }

    /// <summary>The last visit before a day at which the word was noted of the part.</summary>
    public NotedSign? SeenAtVisit(string part, string? site, string word, DateOnly before) =>
        (visitSigns ??= entries.SelectMany(entry => entry.VisitSigns).ToLookup(sign => (sign.Part, sign.Site, sign.Word)))[(part, site, word)]
            .Where(sign => sign.Day < before).MaxBy(sign => sign.Day);

    /// <summary>The moment of an event; without a time, noon of its day.</summary>
    public static DateTime? MomentOf(Entry entry, NoteItem item) =>
        entry.Head.Date?.ToDateTime(item.Head.Time ?? entry.Head.Time ?? new TimeOnly(12, 0));

    private static (string?, string?, string) KindOf(NoteReading reading) => (reading.Comparable, reading.Site, reading.Value.OnScaleOfNine().Unit);

    private Dictionary<(string?, string?, string), List<NoteReading>> SeriesOf(string what)
    {
        if (readings.TryGetValue(what, out Dictionary<(string?, string?, string), List<NoteReading>>? series))
        {
            return series;
        }

        readings[what] = series = [];
        foreach (EntryAnalysis entry in entries)
        {
            foreach (ComparedReading compared in entry.Compared)
            {
                if (compared.Reading.What != what)
                {
                    continue;
                }

                (string?, string?, string) kind = KindOf(compared.Reading);
                if (!series.TryGetValue(kind, out List<NoteReading>? list))
                {
                    series.Add(kind, list = []);
                }

                list.Add(compared.Reading);
            }
        }

        foreach (List<NoteReading> list in series.Values)
        {
            list.Sort(ByTime.Order);
        }

        return series;
    }

    private Dictionary<(string, string?), NotedLump> FirstLumps()
    {
        var first = new Dictionary<(string, string?), NotedLump>();
        foreach (EntryAnalysis entry in entries)
        {
            DateOnly? day = entry.Entry.Head.Date;
            foreach ((int line, Finding lump) in entry.Lumps)
            {
                (string, string?) key = (lump.Site.Name, lump.Tag?.Name);
                if (!first.TryGetValue(key, out NotedLump? noted) || Nullable.Compare(day, noted.Day) < 0)
                {
                    first[key] = new NotedLump(line, day, entry.Readings.FirstOrDefault(reading => reading.Line == line && reading.Span == lump.Size?.Span)?.Written);
                }
            }
        }

        return first;
    }

    private List<NotedSeizure> Seizures() =>
        [.. entries.SelectMany(entry => entry.Seizures.Select(seizure => new NotedSeizure(seizure.Line, MinuteOf(seizure.Value), MomentOf(entry.Entry, seizure.Value)))).OrderBy(seizure => seizure.When)];

    /// <summary>By day, then time, then place in the file.</summary>
    private sealed class ByTime : IComparer<NoteReading>
    {
        public static readonly ByTime Order = new();

        public int Compare(NoteReading? x, NoteReading? y)
        {
            int order = Nullable.Compare(x!.Day, y!.Day);
            order = order != 0 ? order : Nullable.Compare(x.Time, y.Time);
            return order != 0 ? order : x.Line.CompareTo(y.Line);
        }
    }
}
