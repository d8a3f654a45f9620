using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Hover;

/// <summary>On a state, a place of taking, a route or a manner; and on other words of small closed lists.</summary>
internal static class StateHover
{
    private static readonly string[] Lists = ["species", "sex", "neuter", "units", "mcs", "portion", "entry"];

    public static string? At(HoverLine at)
    {
        NoteVocabulary vocabulary = NoteVocabulary.Default;
        string scope = (at.Item?.About ?? at.Word)?.Word ?? "";
        return vocabulary.States(scope).Find(at.Text) is { } state
            ? $"**{state.Word}**: {Md.Sentence(state.Definition)}{Md.Source(state.Source)}"
            : Fixed(at.Text);
    }

    /// <summary>A word of a small closed list; nothing where its definition only says it again (dog: a dog).</summary>
    public static string? Fixed(string text)
    {
        FixedWord? word = Lists.Select(list => NoteVocabulary.Default.Fixed(list).Find(text)).OfType<FixedWord>().FirstOrDefault();
        return word is null || SaysNothing(text, word) ? null : $"**{word.Word}**: {Md.Sentence(word.Definition)}";
    }

    private static bool SaysNothing(string text, FixedWord word) =>
        text.Equals(word.Word, StringComparison.OrdinalIgnoreCase)
        && word.Definition.Split(' ') is [.. { Length: < 2 }, var last] && last.Equals(text, StringComparison.OrdinalIgnoreCase);
}
