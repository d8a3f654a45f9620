using System.Globalization;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>
/// A whole entry to fill in. No line of it holds a value or a describing word: nothing is recorded that was not seen.
/// Where an editor has no stops to fill in, the lines wait behind a <c>#</c>.
/// </summary>
internal static class WholeEntry
{
    public static IEnumerable<Offer> For(NoteAround note, int group)
    {
        string today = DayWords.Iso(note.Document.Today);
        yield return Whole(note, $"{today} check", "in the order of an examination, a line each", CheckLines(note), "check", group);
        yield return Whole(note, $"{today} log", "a day of home care, a line each", LogLines(note), "log", group);
    }

    /// <summary>The parts and vitals of this pet's whole check, then each lump and wound that is still there.</summary>
    private static IEnumerable<(string Text, string Ending)> CheckLines(NoteAround note)
    {
        var plan = CheckPlan.Of(note.Document.Record);
        return plan.Items.Select(step => (step.Item.Word.Word, EndingOf(step.Item.Word, note.Us))).Concat(plan.Places.Select(place => ($"{place.Life.Key.Word} {place.Life.Name}", "")))
            .Concat(plan.Asked.Select(item => (item.Word.Word, "")));
    }

    private static IEnumerable<(string Text, string Ending)> LogLines(NoteAround note) =>
        from word in CheckEdits.Daily
        where word != "walk" || note.Species != Species.Cat
        select (word, word == "water" ? EndingOf(NoteVocabulary.Default.LineWords.Find(word)!, note.Us) : "");

    /// <summary>The counting time, scale or unit that is usual behind the number of a word.</summary>
    private static string EndingOf(LineWord word, bool us) => NumberEndings.For(word.Word).FirstOrDefault()?.Ending
        ?? word.Takes.Where(slot => slot.Needed || slot.Kind == SlotKind.Volume).SelectMany(slot => SlotTable.Units(slot.Kind, word))
            .OrderByDescending(unit => us && NumberOffers.IsUs(unit)).FirstOrDefault("");

    private static Offer Whole(NoteAround note, string head, string detail, IEnumerable<(string Text, string Ending)> lines, string kind, int group)
    {
        string ending = note.LineBreak;
        (string Text, string Ending)[] all = [.. lines];
        string plain = string.Join(ending, [head, $"  {FillIn.HowTo}", .. all.Select(line => $"  # {line.Text}")]);
        string stops = string.Join(ending, [head, .. all.Select((line, index) =>
            string.Create(CultureInfo.InvariantCulture, $"  {Escaped(line.Text)} ${{{index + 1}}}{Escaped(line.Ending)}"))]);
        return new Offer(plain, CompletionKind.Lines, group, detail)
        {
            Label = $"{head}, whole",
            Spellings = [kind, "whole"],
            Snippet = stops,
            Key = $"fixed:entry:{kind}",
        };
    }

    /// <summary>Text as a snippet keeps it: a dollar, a brace and a backslash mean something there.</summary>
    private static string Escaped(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("$", "\\$", StringComparison.Ordinal).Replace("}", "\\}", StringComparison.Ordinal);
}
