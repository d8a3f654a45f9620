using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Words of small closed lists: species, sex, units shown, parts of a meal, muscle grades; states, places, routes; objects.</summary>
internal static class ClosedOffers
{
    private static NoteVocabulary Vocabulary => NoteVocabulary.Default;

    /// <summary>The words of a list.</summary>
    public static IEnumerable<Offer> OfList(string list, int group) => Vocabulary.Fixed(list).Terms.Select(word => new Offer(word.Word, CompletionKind.Value, group, word.Definition)
    {
        Spellings = word.Synonyms,
        Key = $"fixed:{list}:{word.Word}",
    });

    /// <summary>Sex and whether neutered: what is not said yet; the clinic's two letters once they are typed.</summary>
    public static IEnumerable<Offer> Sex(LineState line, int group)
    {
        HashSet<string> said = [.. line.Texts(TokenKind.State).Select(text => Vocabulary.Fixed("sex").Find(text) is not null ? "sex" : "neuter")];
        IEnumerable<Offer> sex = said.Contains("sex") ? [] : OfList("sex", group);
        IEnumerable<Offer> neuter = said.Contains("neuter") ? [] : OfList("neuter", group + 1);
        IEnumerable<Offer> abbreviations = said.Count > 0 ? [] : Vocabulary.Abbreviations("sex").Terms.Select(a => new Offer(a.StandsFor, CompletionKind.Value, group + 2, a.Definition)
        {
            Label = $"{a.Word}: {a.StandsFor}",
            Spellings = [a.Word],
            WhenTyped = true,
        });
        return sex.Concat(neuter).Concat(abbreviations);
    }

    /// <summary>States, places and routes: of each kind, those of a kind that the line does not name yet.</summary>
    public static IEnumerable<Offer> States(LineState line, int group)
    {
        string scopeName = line.Word.Has(SlotKind.Medicine) ? line.Word.Word == "med" ? "med" : "gave"
            : line.Word.Has(SlotKind.Vital) ? line.Subject.Word : line.Word.Word;
        Scope<StateWord> scope = Vocabulary.States(scopeName);
        HashSet<StateKind> said = [.. line.Texts(TokenKind.State).Select(text => scope.Find(text)).OfType<StateWord>().Select(state => state.Kind)];
        foreach (StateWord state in scope.Terms)
        {
            if (!said.Contains(state.Kind) && Takes(line.Word, state.Kind))
            {
                // as a line writes it: with food
                string text = state.Kind is StateKind.Food or StateKind.When ? state.Synonyms[0] : state.Word;
                yield return new Offer(text, CompletionKind.State, group + (int)state.Kind, state.Definition)
                {
                    Spellings = [state.Word, .. state.Synonyms, .. Vocabulary.Abbreviations("route").Terms.Where(a => a.StandsFor == state.Word).Select(a => a.Word)],
                    Key = $"state:{scopeName}:{state.Word}",
                };
            }
        }
    }

    /// <summary>The things a size is compared with, the smallest first.</summary>
    public static IEnumerable<Offer> Objects(int group) => Vocabulary.Objects.Terms.OrderBy(thing => thing.TypicalMm).Select(thing => new Offer(
        thing.Word, CompletionKind.Comparison, group,
        thing.LowMm == thing.HighMm ? $"{thing.LowMm:0.##} mm" : $"about {thing.TypicalMm:0.##} mm ({thing.LowMm:0.##} to {thing.HighMm:0.##})")
    {
        Spellings = thing.Synonyms,
        Key = $"object:{thing.Word}",
    });

    private static bool Takes(LineWord word, StateKind kind) => kind switch
    {
        StateKind.State => word.Has(SlotKind.State),
        StateKind.Place => word.Has(SlotKind.Place),
        StateKind.When => word.Has(SlotKind.Schedule),
        _ => word.Has(SlotKind.Route),
    };
}
