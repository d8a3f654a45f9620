using CsCheck;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
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

    [Fact]
    public void Every_rule_that_is_referred_to_is_there_and_every_rule_is_referred_to()
    {
        HashSet<string> used = [Grammar.Start, .. Grammar.Rules.Values.SelectMany(EbnfGrammar.All).OfType<Reference>().Select(reference => reference.Rule)];
        Assert.Equal(used.Order(StringComparer.Ordinal), Grammar.Rules.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_line_word_stands_in_it() => None.Wrong(
        NoteVocabulary.Default.LineWords.Terms.Select(word => word.Word)
            .Except(Grammar.Rules.Values.SelectMany(EbnfGrammar.All).OfType<Literal>().Select(literal => literal.Text)));

    [Fact]
    public void Every_note_it_allows_is_read_without_a_problem() => Gen.Int.Sample(
        seed =>
        {
            string text = new EbnfWriter(Grammar, new Random(seed)).Write(Grammar.Start);
            var note = Note.Read(text);
            Assert.True(!note.Problems.Any(), string.Join('\n', note.Problems.Select(p => $"{note.Syntax.Lines[p.Line].Text}\n  {p.Problem.Rule}: {p.Problem.Message}")) + "\n" + text);
            Assert.Equal(Meaning.Of(note), Meaning.Of(Note.Read(NoteFormatter.Format(note.Syntax))));
        },
        iter: Effort.Times(3_000));

    /// <summary>Each slot of each word of the table is filled by some line that the EBNF allows.</summary>
    [Fact]
    public void Every_slot_of_every_word_is_reached()
    {
        HashSet<(string Word, SlotKind Slot)> open =
            [.. NoteVocabulary.Default.LineWords.Terms.SelectMany(word => word.Takes.Select(slot => (word.Word, slot.Kind)))];
        var random = new Random(20261004);
        var writer = new EbnfWriter(Grammar, random);
        for (int round = 0; round < 5_000 && open.Count > 0; round++)
        {
            foreach (LineSyntax line in NoteSyntax.Parse(writer.Write(Grammar.Start)).Lines)
            {
                if (line.Item is { } item)
                {
                    open.ExceptWith(SlotsOf(item).Select(slot => (item.Word.Word, slot)));
                }
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

    private static IEnumerable<SlotKind> SlotsOf(NoteItem item)
    {
        LineWord word = item.Word;
        bool Filled(SlotKind slot) => (slot, item) switch
        {
            (SlotKind.Text, TextFact or TextTask) => true,
            (SlotKind.Species, SpeciesFact) or (SlotKind.Sex, SexFact) or (SlotKind.Birth, BornFact) or (SlotKind.Units, UnitsFact) => true,
            (SlotKind.Mass, AdultWeightFact) or (SlotKind.Vital, UsualFact or CallIfFact) or (SlotKind.Range, UsualFact) or (SlotKind.Limit, CallIfFact) => true,
            (SlotKind.State, UsualFact { State: not null } or CallIfFact { State: not null } or Reading { State: not null }) => true,
            (SlotKind.Place, UsualFact { Place: not null } or CallIfFact { Place: not null } or Reading { Place: not null }) => true,
            (SlotKind.Per, UsualFact { Per: not null } or CallIfFact { Per: not null }) => true,
            (SlotKind.Medicine, MedicinePlan or DoseEvent) => true,
            (SlotKind.Amount, MedicinePlan { Dose: not null } or DoseEvent { Dose: not null } or CareEvent { Quantity: not null }) => true,
            (SlotKind.Route, MedicinePlan { Manner.Length: > 0 } or DoseEvent { Manner.Length: > 0 }) => true,
            (SlotKind.Schedule, MedicinePlan { Schedule.Every: not null } or HomeCheckFact or Recheck or DueTask or AcceptFact) or (SlotKind.Rule, AcceptFact) => true,
            (SlotKind.Rate, Reading { Value: PerMinute or CountOverTime }) or (SlotKind.Score, Reading { Value: Score }) => true,
            (SlotKind.Temperature or SlotKind.Mass or SlotKind.Seconds or SlotKind.Glucose, Reading) => true,
            (SlotKind.Site or SlotKind.Node or SlotKind.Joint or SlotKind.Muscle or SlotKind.Gland or SlotKind.Tooth, Examined { Site: not null } or Finding or Reading { Site: not null }) => true,
            (SlotKind.AnySite, Recheck { Site: not null } or Skipped { Site: not null } or AcceptFact { Site: not null }) => true,
            (SlotKind.Tag, Finding { Tag: not null }) or (SlotKind.Size, Finding { Size: not null } or Examined { Size: not null }) => true,
            (SlotKind.Words, Reading { Words.Length: > 0 } or Examined { Words.Length: > 0 } or Finding { Words.Length: > 0 } or CareEvent { Words.Length: > 0 }) => true,
            (SlotKind.Portion or SlotKind.Volume, CareEvent { Quantity: not null }) or (SlotKind.FoodName, CareEvent { Food: not null }) => true,
            (SlotKind.Times, CareEvent { Times: not null }) or (SlotKind.Duration, CareEvent { Duration: not null }) or (SlotKind.Distance, CareEvent { Distance: not null }) => true,
            (SlotKind.Note, AcceptFact { Reason: not null } or DoseEvent { Note: not null } or CareEvent { Note: not null } or Skipped { Reason: not null }) => true,
            (SlotKind.Item, Recheck or Skipped or AcceptFact { Item: not null }) or (SlotKind.Topic, DueTask) or (SlotKind.File, Photo) or (SlotKind.Ok, RestOk) => true,
            _ => false,
        };
        return word.Takes.Select(slot => slot.Kind).Where(Filled);
    }
}
