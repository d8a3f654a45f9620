using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>How the animal was, where a vital was taken, how a medicine goes in.</summary>
internal static class StateSlots
{
    public static SlotReader State { get; } = new StateSlot(SlotKind.State);

    public static SlotReader Place { get; } = new StateSlot(SlotKind.Place);

    public static SlotReader Route { get; } = new StateSlot(SlotKind.Route);

    /// <summary>The word whose states count.</summary>
    public static string ScopeOf(Cursor at) => ScopeOf(at.Word, at.Subject);

    /// <summary>True where a state or a route stands: "in the ear" is a manner, not a time.</summary>
    public static bool StateAhead(this Cursor at) => at.Phrase(at.Vocabulary.States(ScopeOf(at)), at.At, out _) > 0;

    /// <summary>Puts a state into its slot; a second one of its kind is reported.</summary>
    public static void Keep(Cursor at, StateWord word, TextSpan span)
    {
        SlotKind kind = word.Kind switch { StateKind.State => SlotKind.State, StateKind.Place => SlotKind.Place, _ => SlotKind.Route };
        StateWord? before = at.Filled.Select(slot => slot.Value).OfType<StateWord>().FirstOrDefault(other => other.Kind == word.Kind);
        if (before is null)
        {
            at.Add(kind, word);
        }
        else if (before != word && kind == SlotKind.State && !at.Tokens.Exists(token => token.Kind == TokenKind.State && token.Span != span))
        {
            // "RRR 6/15s sleeping": what is written outright counts
            at.Set(kind, word);
        }
        else if (before != word)
        {
            at.SaidTwice(span, before.Word);
        }
    }

    private static string ScopeOf(LineWord word, LineWord subject) => word.Has(SlotKind.Medicine) ? word.Word == "med" ? "med" : "gave" : subject.Word;

    private sealed class StateSlot(SlotKind kind) : SlotReader(kind)
    {
        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.States(ScopeOf(word, word)).Spellings;

        public override bool BindWord(Cursor at)
        {
            if (at.TakePhrase(at.Vocabulary.States(ScopeOf(at)), TokenKind.State, out StateWord? word, out TextSpan span))
            {
                Keep(at, word!, span);
                return true;
            }

            if (Kind != SlotKind.Route || at.Vocabulary.RouteShort.Find(at.TextOf(at.Part)) is not { } abbreviation)
            {
                return false;
            }

            TextSpan short_ = at.Part.Span;
            at.Taken(TokenKind.State);
            if (at.Vocabulary.States(ScopeOf(at)).Find(abbreviation.StandsFor) is { } route)
            {
                Keep(at, route, short_);
            }

            return true;
        }
    }
}
