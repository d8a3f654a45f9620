using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// A word about a lump that is a reason to call and was not written when the lump was last noted; a lump that is there again.
/// What the clinic wrote or saw at a visit is not new.
/// </summary>
public sealed class LumpChangeRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-change", "seen", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "lump";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        var atVisits = new HashSet<string>();
        for (int index = 1; index < course.Lines.Length; index++)
        {
            Noted before = course.Lines[index - 1];
            Noted now = course.Lines[index];
            if (before.AtVisit)
            {
                atVisits.UnionWith(before.Item!.Words.Select(word => word.Word.Word));
            }

            if (now.Item is not Finding lump || LumpWords.End(lump) is not null)
            {
                continue;
            }

            if (NewWord(before, now, lump, atVisits, at.Facts) is { } word)
            {
                yield return word;
            }
            else if (LumpWords.End(before.Item) is { } end && !now.AtVisit)
            {
                yield return this.At(FindingLevel.Watch, now.Line, lump.Site.Span,
                    $"Lump {course.Key.Detail} is noted again; on {before.Day:yyyy-MM-dd} it was written as `{end}`.",
                    "common practice, no source", before.Line);
            }
        }
    }

    private NoteFinding? NewWord(Noted before, Noted now, Finding lump, HashSet<string> atVisits, PetFacts note)
    {
        // "hard same" says in so many words that it is not new
        if (LumpWords.Has(lump, "same") || LumpWords.Has(lump, "old"))
        {
            return null;
        }

        (Described Word, Meaning Meaning)? worst = null;
        foreach (Described word in lump.Words)
        {
            if (word.Word.For(note.Pet.Species, note.Pet.Male == true) is { Level: >= Level.Call } meaning && !(worst?.Meaning.Level >= meaning.Level)
                && !LumpWords.Has(before.Item, word.Word.Word)
                && (meaning.Level == Level.Urgent || (!now.AtVisit && !atVisits.Contains(word.Word.Word) && !KnownFinding.KnowsWord(note, lump, word.Word.Word, now.Day))))
            {
                worst = (word, meaning);
            }
        }

        if (worst is not { } found)
        {
            return null;
        }

        FindingLevel level = found.Meaning.Level == Level.Urgent ? FindingLevel.Urgent : FindingLevel.Call;
        string definition = Wording.InBrackets(found.Meaning.Definition);
        ImmutableArray<string> others = [.. lump.Words.Where(word => word != found.Word && word.Word.For(note.Pet.Species, note.Pet.Male == true) is { Level: > Level.Expected }).Select(word => word.Word.Word)];
        string more = others.IsEmpty ? "" : $" Also written: {string.Join(", ", others)}.";
        return this.At(level, now.Line, found.Word.Span,
            $"Lump {CourseKey.Of(lump).Detail}: `{found.Word.Word.Word}` ({definition}), new since {before.Day:yyyy-MM-dd}.{more}",
            found.Meaning.LevelSource, before.Line);
    }
}
