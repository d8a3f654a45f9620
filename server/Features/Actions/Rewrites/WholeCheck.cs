using HealthNotes.Analysis.Pet;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>What belongs to a whole check, and what of it a check does not name yet.</summary>
internal static class WholeCheck
{
    /// <summary>The parts and vitals that are asked of this pet, head to tail. Glucose is asked of a pet on insulin; a pain score needs a scale that not every clinic has shown.</summary>
    public static IEnumerable<LineWord> Of(PetProfile pet) => NoteVocabulary.Default.LineWords.Terms
        .Where(word => word.Kind == WordKind.Exam || (word.Kind == WordKind.Vital && word.Word != "pain" && (word.Word != "glucose" || pet.OnInsulin)))
        .OrderBy(word => word.Order);

    /// <summary>
    /// What a check does not name, in any of the check entries of its day. <c>else ok</c> speaks for the parts, never for a
    /// measurement. A line that is half typed names its part.
    /// </summary>
    public static List<LineWord> Missing(Document document, Entry check)
    {
        List<Entry> day = [.. document.Note.Entries.Where(entry => entry.Line == check.Line || (check.Head.Date is { } date && entry.Head.Date == date && entry.Head.Kind == "check"))];
        bool restOk = day.Exists(entry => entry.Items.Any(item => item.Value is RestOk));
        HashSet<string> named = [.. day.SelectMany(entry => entry.Items).Select(item => EntryLines.Subject(item.Value).Word)];
        named.UnionWith(day.SelectMany(entry => entry.NotUnderstood).Select(line => LineAt.WordOf(document.Syntax.Lines[line])?.Word).OfType<string>());
        return [.. Of(document.Analysis.Pet).Where(word => !named.Contains(word.Word) && !(restOk && word.Kind == WordKind.Exam))];
    }
}
