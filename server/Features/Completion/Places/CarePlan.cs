using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Completion.Places;

/// <summary>A medicine's plan, the line it stands in, and the day it was written (null in the opening).</summary>
internal sealed record PlannedMedicine(string Name, MedicinePlan Plan, int Line, DateOnly? Written);

/// <summary>The medicines that are to be given on a day, as the note says. Nothing is added to what is written.</summary>
/// <param name="Current">Those whose plan holds, in the order they were written.</param>
/// <param name="OnInsulin">True when any plan, past ones too, is for insulin, or a known condition is diabetes.</param>
internal sealed record CarePlan(IReadOnlyList<PlannedMedicine> Current, bool OnInsulin)
{
    /// <summary>
    /// The plan for the day of the line's entry: of the lines about a medicine the latest counts, and <c>stop</c> ends it.
    /// An entry of a later day does not count, wherever it stands.
    /// </summary>
    public static CarePlan For(NoteAround note)
    {
        var latest = new List<(string Name, PlannedMedicine? Plan)>();
        bool insulin = false;
        int left = Lookback.Lines;
        ImmutableArray<Entry> entries = note.Document.Note.Entries;
        for (int index = entries.Length - 1; index >= 0 && (left -= entries[index].Items.Length) >= 0; index--)
        {
            Entry entry = entries[index];
            if (!(entry.Head.Date > note.Day))
            {
                TakeBackwards(entry.Items, entry.Head.Date, latest, ref insulin);
            }
        }

        TakeBackwards(note.Document.Note.Opening.Facts, null, latest, ref insulin);
        latest.Reverse();
        return new CarePlan([.. latest.Select(medicine => medicine.Plan).OfType<PlannedMedicine>().Where(plan => Holds(plan, note.Day))], insulin);
    }

    /// <summary>True when two names mean the same medicine: <c>ear-drops</c> is <c>Ear drops</c>.</summary>
    public static bool SameMedicine(string one, string other) =>
        one.Length == other.Length && one.Replace('-', ' ').Equals(other.Replace('-', ' '), StringComparison.OrdinalIgnoreCase);

    /// <summary>Of each medicine the last line comes first, and only that counts.</summary>
    private static void TakeBackwards(ImmutableArray<Placed<NoteItem>> items, DateOnly? written, List<(string Name, PlannedMedicine? Plan)> latest, ref bool insulin)
    {
        for (int index = items.Length - 1; index >= 0; index--)
        {
            switch (items[index].Value)
            {
                case MedicinePlan plan:
                    insulin |= plan.Medicine.Text.Contains("insulin", StringComparison.OrdinalIgnoreCase);
                    Add(plan.Medicine.Text, new PlannedMedicine(plan.Medicine.Text, plan, items[index].Line, written));
                    break;
                case DoseEvent { Word.Word: "stop" } stop:
                    Add(stop.Medicine.Text, null);
                    break;
                case TextFact { Word.Word: "known" } known:
                    insulin |= known.Text.Text.Contains("diabet", StringComparison.OrdinalIgnoreCase);
                    break;
                default:
                    break;
            }
        }

        void Add(string name, PlannedMedicine? plan)
        {
            if (!latest.Exists(other => SameMedicine(other.Name, name)))
            {
                latest.Add((name, plan));
            }
        }
    }

    private static bool Holds(PlannedMedicine medicine, DateOnly day)
    {
        Schedule schedule = medicine.Plan.Schedule;
        DateOnly? first = schedule.From?.Earliest ?? medicine.Written;
        DateOnly? last = schedule.Until?.Latest;
        if (last is null && first is { } from && schedule.For is { } length)
        {
            last = Schedule.Add(from, length).Plus(-1);
        }

        return !(first > day) && !(last < day);
    }
}
