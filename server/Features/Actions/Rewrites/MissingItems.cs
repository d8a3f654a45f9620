using HealthNotes.Analysis.Pet;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>The parts and vitals of a whole check, head to tail.</summary>
internal static class MissingItems
{
    /// <summary>What is asked of this pet.</summary>
    public static IEnumerable<LineWord> OfAWholeCheck(PetProfile pet) => NoteVocabulary.Default.LineWords.Terms
        .Where(word => word.Kind == WordKind.Exam || (word.Kind == WordKind.Vital && word.Word != "pain" && (word.Word != "glucose" || pet.OnInsulin)))
        .OrderBy(word => word.Order);
}
