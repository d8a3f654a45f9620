using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>Facts without which little can be compared.</summary>
public sealed class FactsMissingRule : IOpeningRule
{
    /// <inheritdoc/>
    public string Name => "facts-missing";

    /// <inheritdoc/>
    public string Topic => "facts";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Note note, RuleContext context)
    {
        List<string> missing = [];
        if (context.Pet.Name is null)
        {
            missing.Add("pet NAME");
        }

        if (context.Pet.Species == Species.Unknown)
        {
            missing.Add("species dog (or cat), without which no reading is compared with a normal range");
        }

        if (context.Pet.Born is null)
        {
            missing.Add("born 2017-03 (or about: ~2017), without which readings are compared as for a grown animal");
        }

        if (missing.Count > 0)
        {
            int length = note.Syntax.Lines[0].Text.Length;
            yield return RuleContext.At(Name, FindingLevel.Info, 0, new TextSpan(0, length),
                $"The opening does not say: {string.Join("; ", missing)}.", RuleBook.NoteFormat);
        }
    }
}
