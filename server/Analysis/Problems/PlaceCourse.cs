using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells a lump, a wound or a node over its life.</summary>
public static class PlaceCourse
{
    /// <summary>Words that are told on their own: what the clinic did, and how it ended.</summary>
    private static readonly string[] Apart = ["sampled", "vet-knows", "gone", "removed", "resolved", "healed", "same"];

    /// <summary>What to show of it, whatever was found.</summary>
    public static PlacePart Of(Record.PetRecord record, int number, LumpLife life)
    {
        LumpSize[] sizes = [.. life.SizeOfEachDay];
        LumpSize? from = sizes.Length > 1 ? sizes[0] : null;
        LumpSize? now = sizes.LastOrDefault();
        LumpSize? visit = record.Period.Visit?.Head.Date is { } on ? sizes.LastOrDefault(size => size.Day <= on) : null;
        var signs = new Dictionary<string, DateOnly>();
        foreach (Noted line in life.Lines.Where(line => !(line.Day < record.CurrentFrom)))
        {
            foreach (Described word in line.Item!.Words.Where(word => !Apart.Contains(word.Word.Word) && (word.Word.Part != "any" || word.Word.Word is "worse" or "better")))
            {
                string name = word.Word.Word.Replace('-', ' ');
                signs.Remove(name);
                signs.Add(name, line.Day);
            }
        }

        return new PlacePart(number, life, from, visit == from || visit == now ? null : visit, now, [.. signs.Select(sign => (sign.Key, sign.Value))]);
    }
}
