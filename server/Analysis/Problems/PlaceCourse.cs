using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells a lump, a wound or a node over its life.</summary>
public static class PlaceCourse
{
    /// <summary>So many sizes are all shown (common practice, no source).</summary>
    private const int AllSizes = 5;

    /// <summary>Words that are told on their own: what the clinic did, and how it ended.</summary>
    private static readonly string[] Apart = ["sampled", "vet-knows", "gone", "removed", "resolved", "healed", "same"];

    /// <summary>What to show of it, whatever was found.</summary>
    public static PlacePart Of(Record.PetRecord record, int number, LumpLife life)
    {
        LumpSize[] sizes = [.. life.SizeOfEachDay];
        LumpSize? now = sizes.LastOrDefault();

        // a size by comparison is a guess: a measured one is compared with the first that was measured
        LumpSize? from = sizes.Length < 2 ? null : now!.IsMeasured && sizes.SkipLast(1).FirstOrDefault(size => size.IsMeasured) is { } measured ? measured : sizes[0];
        LumpSize? visit = record.Period.Visit?.Head.Date is { } on ? sizes.LastOrDefault(size => size.Day <= on) : null;
        IEnumerable<LumpSize> between = sizes.Length <= AllSizes ? sizes : sizes.Where(size => size == visit || size == sizes[^2]);
        return new PlacePart(number, life, from, from is null ? [] : [.. between.Where(size => size.Day > from.Day && size.Day < now!.Day)], now, [.. Signs(record, life)])
        {
            Lines = [.. life.Lines.Select(line => line.Line)],
            IsNewToClinic = record.Period.Visit?.Head.Date is { } seen && life.First.Day > seen && life.Looks.IsEmpty,
        };
    }

    /// <summary>The words of its lines, those that ended first; what ended before the period is left out.</summary>
    private static IEnumerable<PlaceSign> Signs(Record.PetRecord record, LumpLife life)
    {
        Noted[] described = [.. life.Lines.Where(line => Words(line.Item!).Any() || !line.Item!.Absent.IsEmpty)];
        foreach (string word in described.SelectMany(line => Words(line.Item!)).Distinct())
        {
            List<(DateOnly First, DateOnly Last)> runs = [];
            DateOnly? gone = null;
            bool goesOn = false;
            foreach (Noted line in described)
            {
                bool has = Words(line.Item!).Contains(word);
                gone = has ? null : gone ?? (line.Item!.Absent.Any(absent => absent.Word.Word.Replace('-', ' ') == word) ? line.Day : null);
                if (has && goesOn)
                {
                    runs[^1] = (runs[^1].First, line.Day);
                }
                else if (has)
                {
                    runs.Add((line.Day, line.Day));
                }

                goesOn = has;
            }

            ImmutableArray<(DateOnly First, DateOnly Last)> current = [.. runs.Where(run => !(run.Last < record.CurrentFrom))];
            if (!current.IsEmpty)
            {
                yield return new PlaceSign(word, current, gone, goesOn);
            }
        }
    }

    private static IEnumerable<string> Words(NoteItem item) => item.Words.Where(word => !Apart.Contains(word.Word.Word) && (word.Word.Part != "any" || word.Word.Word is "worse" or "better")).Select(word => word.Word.Word.Replace('-', ' '));
}
