using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Rules;

/// <summary>Facts without which little can be compared.</summary>
public sealed class FactsMissingRule : IOpeningRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("facts-missing", "facts", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at)
    {
        List<string> missing = [];
        if (at.Note.IsRules)
        {
            yield break;
        }

        if (at.Facts.Pet.Name is null)
        {
            missing.Add("pet NAME");
        }

        if (at.Facts.Pet.Species == Species.Unknown)
        {
            missing.Add("species dog (or cat), without which no reading is compared with a normal range");
        }

        if (at.Facts.Pet.Born is null)
        {
            missing.Add("born 2017-03 (or about: ~2017), without which readings are compared as for a grown animal");
        }

        if (missing.Count > 0)
        {
            int length = at.Note.Syntax.Lines[0].Text.Length;
            yield return this.At(FindingLevel.Info, 0, new TextSpan(0, length),
                $"The opening does not say: {string.Join("; ", missing)}.", RuleBook.NoteFormat);
        }
    }
}
