using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Words that describe what was seen, and <c>ok</c>: the expected ones first, the level beside each.</summary>
internal static class WordOffers
{
    private static NoteVocabulary Vocabulary => NoteVocabulary.Default;

    /// <summary>The signs of the part and, where none is written, ok.</summary>
    public static IEnumerable<Offer> For(LineState line, int group) => line.Texts(TokenKind.Describing).Any() ? Signs(line, group) : [.. Signs(line, group), Ok(group)];

    /// <summary>The signs of the part: all that may stand behind a negation.</summary>
    public static IEnumerable<Offer> Signs(LineState line, int group)
    {
        string part = (line.Word.Has(SlotKind.Item) ? line.About ?? line.Word : line.Word).Word;
        Scope<DescribingWord> scope = Vocabulary.Describing(part);
        HashSet<DescribingWord> said = [.. line.Texts(TokenKind.Describing).Select(text => scope.Find(text)).OfType<DescribingWord>()];
        bool male = line.Note.Male ?? false;
        foreach (DescribingWord word in scope.Terms)
        {
            if (said.Contains(word) || (said.Count > 0 && word.Word == "none") || word.For(line.Note.Species, male) is not { } meaning)
            {
                continue;
            }

            bool general = word.Part == "any";
            yield return new Offer(word.Word, CompletionKind.Describing, group + (general ? 4 : (int)meaning.Level), PlainLevels.Of(meaning.Level))
            {
                Spellings = word.Synonyms,
                Key = $"describing:{part}:{word.Word}:{line.Note.Animal}:{(male ? "male" : "-")}",
            };
        }

        foreach (Offer offer in Abbreviated(line, scope, group, male))
        {
            yield return offer;
        }
    }

    /// <summary>The word ok.</summary>
    public static Offer Ok(int group)
    {
        FixedWord ok = Vocabulary.Ok.Find("ok")!;
        return new Offer(ok.Word, CompletionKind.Describing, group, "looked at, as expected") { Spellings = ok.Synonyms, Key = "fixed:ok:ok" };
    }

    /// <summary>A trade abbreviation stands for a word: once it is typed, the plain word is offered.</summary>
    private static IEnumerable<Offer> Abbreviated(LineState line, Scope<DescribingWord> scope, int group, bool male)
    {
        foreach (Abbreviation abbreviation in Vocabulary.Abbreviations("word:" + line.Word.Word).Terms)
        {
            if (scope.Find(abbreviation.StandsFor)?.For(line.Note.Species, male) is { } meaning)
            {
                yield return new Offer(abbreviation.StandsFor, CompletionKind.Describing, group, $"{PlainLevels.Of(meaning.Level)} ({abbreviation.Word})")
                {
                    Label = $"{abbreviation.Word}: {abbreviation.StandsFor}",
                    Spellings = [abbreviation.Word],
                    WhenTyped = true,
                    Key = $"describing:{line.Word.Word}:{abbreviation.StandsFor}:{line.Note.Animal}:{(male ? "male" : "-")}",
                };
            }
        }
    }
}
