using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Hover;

/// <summary>On the word of a line: what it means, how to take the reading, what is normal, and what this pet had before.</summary>
internal static class WordHover
{
    private const string HandleWithCare = "Do not handle an animal that may bite, and stop if it struggles.";
    private const string HandleSource = "University of Florida Health, 2014";

    public static string? At(HoverLine at)
    {
        string spelled = at.Text;
        NoteVocabulary vocabulary = NoteVocabulary.Default;
        LeadWord? lead = vocabulary.LineWords.Find(spelled) is null ? vocabulary.Leads.Find(spelled) : null;
        if (vocabulary.Starting(spelled) is not { } word)
        {
            return null;
        }

        bool isHead = at.Item is null || at.Item.Head.Span == at.Token.Span;
        return Md.Join(
        [
            Meaning(word),
            lead is null ? "" : $"`{spelled}`: {Md.Sentence(lead.Definition)} Here it stands for `{string.Join(", ", lead.Lines.Select(line => string.Join(' ', line.Words.Prepend(line.Word))))}`.",
            HowToTake.Of(word.Word) is { } how ? Steps(how) : "",
            .. word.Kind == WordKind.Vital ? Ranges.Of(at, word.Word) : [],
            .. isHead ? OfLine(at) : [],
        ]);
    }

    /// <summary>A word that waits in a check: what it means, and how to look.</summary>
    public static string Waiting(LineWord word, Species species) => Md.Join([Meaning(word), HowToTake.Of(word.Word, species) is { } how ? Steps(how) : ""]);

    /// <summary>What a word means, with its name.</summary>
    public static string Meaning(LineWord word) => $"**{word.Word}**: {Md.Sentence(word.Definition)}{Md.Source(word.Source)}";

    /// <summary>How a reading is taken safely.</summary>
    public static string Steps(HowToTake how)
    {
        string caution = string.Join(' ', new[] { how.Touch ? HandleWithCare : null, how.Caution }.OfType<string>());
        string source = how.Touch ? $"{how.Source}; handling: {HandleSource}" : how.Source;
        return $"**How to take it:** {how.Steps}{(caution.Length > 0 ? $" **Caution:** {caution}" : "")}{Md.Source(source)}";
    }

    private static IEnumerable<string> OfLine(HoverLine at)
    {
        if (at.Item is DoseEvent or MedicinePlan)
        {
            foreach (string line in MedicineHover.Lines(at))
            {
                yield return line;
            }
        }
        else if (at.Item is Finding finding)
        {
            foreach (string line in TagHover.History(at, finding.Word.Word, finding.Site.Name, finding.Tag?.Name))
            {
                yield return line;
            }

            if (at.Reading is { } size)
            {
                yield return ValueHover.Here(at, size);
                yield return ValuesBefore.Change(at, size);
            }
        }
        else if (at.Reading is { } reading)
        {
            yield return ValueHover.Here(at, reading);
            yield return ValuesBefore.Of(at, reading);
        }
        else if (DateHover.Due(at) is { } due)
        {
            yield return DateHover.Day(at, due);
        }
    }
}
