using CsCheck;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Reference;
using HealthNotes.Tests.Support;
using Meaning = HealthNotes.Tests.Support.Meaning;

namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>The EBNF of the language reference and the parser agree.</summary>
public class EbnfTests
{
    private static readonly EbnfGrammar Grammar = EbnfReader.Read(Assert.Single(LanguagePage.Blocks("ebnf")).Text);

    private static readonly SlotKind[] Sites =
        [SlotKind.Site, SlotKind.Node, SlotKind.Joint, SlotKind.Muscle, SlotKind.Gland, SlotKind.Tooth, SlotKind.AnySite];

    /// <summary>What stands in a clinic's rules alone; the block is about notes.</summary>
    private static readonly string[] OnlyInRules = ["alias", "override-urgent"];

    [Fact]
    public void Every_rule_that_is_referred_to_is_there_and_every_rule_is_referred_to()
    {
        HashSet<string> used = [Grammar.Start, .. Grammar.Rules.Values.SelectMany(EbnfGrammar.All).OfType<Reference>().Select(reference => reference.Rule)];
        Assert.Equal(used.Order(StringComparer.Ordinal), Grammar.Rules.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_line_word_stands_in_it() => None.Wrong(
        NoteVocabulary.Default.LineWords.Terms.Select(word => word.Word)
            .Except(OnlyInRules).Except(Grammar.Rules.Values.SelectMany(EbnfGrammar.All).OfType<Literal>().Select(literal => literal.Text)));

    [Fact]
    public void Every_note_it_allows_is_read_without_a_problem() => Gen.Int.ForAll(
        seed =>
        {
            string text = new EbnfWriter(Grammar, new Random(seed)).Write(Grammar.Start);
            var note = Note.Read(text);
            Assert.True(!note.Problems.Any(), string.Join('\n', note.Problems.Select(p => $"{note.Syntax.Lines[p.Line].Text}\n  {p.Problem.Rule}: {p.Problem.Message}")) + "\n" + text);
            string tidied = NoteFormatter.Format(note.Syntax);
            None.Wrong(Meaning.Of(note).Split('\n').Zip(Meaning.Of(Note.Read(tidied)).Split('\n')).Where(pair => pair.First != pair.Second).Select(pair => $"{pair.First}\n{pair.Second}"));
        },
        iter: Effort.Times(300));

    /// <summary>Each slot of each word of the table is filled by some line that the EBNF allows.</summary>
    [Fact]
    public void Every_slot_of_every_word_is_reached()
    {
        HashSet<(string Word, SlotKind Slot)> open =
            [.. NoteVocabulary.Default.LineWords.Terms.Where(word => !OnlyInRules.Contains(word.Word)).SelectMany(word => word.Takes.Select(slot => (word.Word, slot.Kind)))];
        var random = new Random(20261004);
        var writer = new EbnfWriter(Grammar, random);
        string[] rules = ["opening", "opening-item", "limit", "exam", "finding", "care", "vital", "act", "task", "item"];
        for (int round = 0; round < 60_000 && open.Count > 0; round++)
        {
            foreach (LineSyntax line in NoteSyntax.Parse(writer.Write(rules[round % rules.Length])).Lines)
            {
                open.ExceptWith(line.Items.SelectMany(item => SlotsOf(item).Select(slot => (item.Word.Word, slot))));
            }
        }

        Assert.True(open.Count == 0, string.Join(", ", open.Order()));
    }

    [Fact]
    public void Every_alternative_is_written()
    {
        string[] all = [.. Grammar.Rules.Keys.SelectMany(rule => Grammar.Alternatives(rule).Select((_, index) => $"{rule}/{index}"))];
        var writer = new EbnfWriter(Grammar, new Random(20261005));
        for (int round = 0; round < 20_000 && writer.Used.Count < all.Length; round++)
        {
            writer.Write(Grammar.Start);
        }

        None.Wrong(all.Except(writer.Used));
    }

    /// <summary>What a line holds; every site goes into one slot, whichever kind of site the word takes.</summary>
    private static IEnumerable<SlotKind> SlotsOf(NoteItem item) => item.Body.Filled.SelectMany(slot => slot.Kind == SlotKind.Site ? Sites : [slot.Kind]);
}
