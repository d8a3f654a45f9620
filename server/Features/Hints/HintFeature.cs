using System.Collections.Immutable;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;

namespace HealthNotes.Features.Hints;

/// <summary>Computed values behind what was written. Only what is not on the line already.</summary>
public static class HintFeature
{
    /// <summary>The hints of the lines that <paramref name="range"/> touches, in order. Other lines are not looked at, but for weighings and the entries before.</summary>
    public static ImmutableArray<HintText> In(Document document, PlaceRange range, FeatureSettings settings)
    {
        ImmutableArray<HintText>.Builder hints = ImmutableArray.CreateBuilder<HintText>();
        ImmutableArray<Entry> entries = document.Note.Entries;
        bool us = ShownIn.Us(document, settings);
        var before = new EntriesBefore(entries);
        int first = document.Clamp(range.Start).Line;
        int last = document.Clamp(range.End).Line;
        int next = EntriesBefore.FirstFrom(entries, first);
        for (int i = first; i <= last; i++)
        {
            LineSyntax line = document.Syntax.Lines[i];
            if (next < entries.Length && entries[next].Line == i)
            {
                if (entries[next].Head is { NoYear: not null, Date: { } settled } undated)
                {
                    hints.Add(new HintText(new Place(i, undated.DateSpan.End), "= " + DayWords.Iso(settled), "The entry above tells the year.", HintKinds.Days));
                }

                if (settings.Hints.Days && Since(before.Of(next), entries[next], line) is { } since)
                {
                    hints.Add(since);
                }

                next++;
            }
            else if (settings.Hints.Readings && ReadingHint.OfText(line, i) is { } asText)
            {
                hints.Add(asText);
            }
            else if (settings.Hints.Readings && next > 0 && entries[next - 1].Head.Kind == "check" && HowHint(document, i) is { } how)
            {
                hints.Add(how);
            }
            else if (!line.Items.IsEmpty)
            {
                DateOnly? day = next > 0 ? entries[next - 1].Head.Date : null;
                hints.AddRange(line.Items.Select(item => Of(document, i, item, day, next > 0, us, settings.Hints)).OfType<HintText>().Distinct());
                if (settings.Hints.Readings && ReadingHint.Of(line, i) is { } reading)
                {
                    hints.Add(reading);
                }
            }
        }

        return hints.DrainToImmutable();
    }

    private static HintText? Of(Document document, int line, NoteItem item, DateOnly? day, bool inEntry, bool us, HintSettings settings)
    {
        if (item is DoseEvent or MedicinePlan)
        {
            // a plan of the opening is compared with the last weighing: it is what holds now
            return settings.Doses && (inEntry ? day : document.Today) is { } weighed && DoseHint.Of(document, item.Value, weighed, us) is { } dose && !IsAsBefore(document, line, item, weighed, dose, us)
                ? new HintText(new Place(line, item.Value!.Span.End), dose.Label, dose.How, dose.Kind)
                : null;
        }

        if (item.Value is { } value)
        {
            return Computed.Of(value, us) is { } computed && IsOn(computed.Kind, settings)
                ? new HintText(new Place(line, value.Span.End), computed.Label, computed.How, computed.Kind)
                : null;
        }

        return settings.Days && day is { } written && item is { Word.Kind: WordKind.Task, Schedule: { On: null, Until: null, From: null } schedule } && schedule.DayAfter(written) is { } due
            ? new HintText(new Place(line, LineAt.ContentEnd(document.Syntax.Lines[line])), "= " + DayWords.Short(due), $"Counted from {DayWords.Iso(written)}, the day of its entry.", HintKinds.Days)
            : null;
    }

    /// <summary>Behind a part that waits for what was seen: how to look, in half a line.</summary>
    private static HintText? HowHint(Document document, int line) => WaitingLine.At(document, line) is { Bare: true } waiting && HowToTake.Of(waiting.Word.Word, document.Record.Pet.Species) is { } how
        ? new HintText(new Place(line, document.Syntax.Lines[line].Text.Length), how.FirstSentence, how.Steps, HintKinds.Reading)
        : null;

    /// <summary>A dose for each kilogram is shown once, and again when it changes.</summary>
    private static bool IsAsBefore(Document document, int line, NoteItem item, DateOnly day, Computed dose, bool us) => item is DoseEvent { Medicine: var medicine }
        && document.Record.Of(new CourseKey("gave", CourseKey.MedicineName(medicine.Text))).Before(day, item.Head.Time ?? TimeOnly.MaxValue, line).FirstOrDefault(before => before.Line < line) is { } last
        && DoseHint.Of(document, last.Item!.Value, last.Day, us)?.Label == dose.Label;

    private static HintText? Since(Entry? before, Entry entry, LineSyntax line)
    {
        if (before?.Head.Date is not { } earlier || entry.Head.Date is not { } day || day <= earlier)
        {
            return null;
        }

        return new HintText(
            new Place(entry.Line, LineAt.ContentEnd(line)),
            $"{day.DayNumber - earlier.DayNumber} d after the {before.Head.Kind} before",
            $"Days since the {entry.Head.Kind} before, {DayWords.Iso(earlier)} (line {before.Line + 1}).",
            HintKinds.Days);
    }

    private static bool IsOn(string kind, HintSettings settings) => kind switch
    {
        HintKinds.Rate => settings.Rates,
        HintKinds.Size => settings.Sizes,
        HintKinds.Difference => settings.Differences,
        _ => settings.Conversions,
    };
}
