using CsCheck;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>What holds for every text, however odd.</summary>
public class LineProperties
{
    [Fact]
    public void Printing_the_tree_gives_back_the_text() => Soup.Note.Sample(
        text => Assert.Equal(text, NoteSyntax.Parse(text).Print()), iter: Effort.Times(600));

    [Fact]
    public void Tokens_tile_the_line() => Soup.Line.Sample(Tile, iter: Effort.Times(3_000));

    /// <summary>What a line holds is never skipped in silence: between tokens there are only blanks and marks that part words.</summary>
    [Fact]
    public void Nothing_but_blanks_and_commas_is_left_unread() => Soup.Line.Sample(
        text =>
        {
            LineSyntax line = Single(text);
            string marks = line.Kind == LineKind.EntryHead ? ",;:Tt" : ",;:";
            Assert.All(line.Tokens.Where(token => token.Kind == TokenKind.Blank), token =>
                Assert.All(token.Span.In(text).ToArray(), c => Assert.True(char.IsWhiteSpace(c) || marks.Contains(c), $"`{c}` is left unread")));
        },
        iter: Effort.Times(3_000));

    [Fact]
    public void Problems_lie_inside_their_line() => Soup.Line.Sample(
        text => Assert.All(Single(text).Problems, problem =>
        {
            Assert.InRange(problem.Span.Start, 0, text.Length - 1);
            Assert.InRange(problem.Span.Length, 1, text.Length - problem.Span.Start);
            Assert.Contains(problem.Rule, ProblemRules.All);
            Assert.NotEmpty(problem.Message);
        }),
        iter: Effort.Times(3_000));

    [Fact]
    public void What_is_not_understood_is_flagged_and_what_is_flagged_is_marked() => Soup.Line.Sample(
        text =>
        {
            LineSyntax line = Single(text);
            if (line.Problems.IsEmpty)
            {
                Assert.DoesNotContain(line.Marks, token => token.Kind == TokenKind.Unknown);
                Assert.Equal(line.Kind == LineKind.Item, line.Item is not null);
            }
        },
        iter: Effort.Times(3_000));

    [Fact]
    public void Nothing_throws_and_every_derived_value_can_be_asked_for() => Soup.Note.Sample(
        text =>
        {
            var note = Note.Read(text);
            foreach (Placed<NoteItem> item in note.Opening.Facts.Concat(note.Entries.SelectMany(entry => entry.Items)))
            {
                Meaning.Of(item.Value);
                Ask(item.Value);
            }
        },
        iter: Effort.Times(600));

    private static void Ask(NoteItem item)
    {
        DateOnly late = DateOnly.MaxValue;
        Schedule schedule = item switch
        {
            Recheck recheck => recheck.Schedule,
            DueTask due => due.Schedule,
            MedicinePlan plan => plan.Schedule,
            HomeCheckFact fact => fact.Schedule,
            _ => Schedule.None,
        };
        _ = schedule.DayAfter(late);
        _ = schedule.DayAfter(null);
        foreach (PartialDate date in new[] { schedule.From, schedule.Until, schedule.On, (item as BornFact)?.Date, (item as UsualFact)?.Per?.When }.OfType<PartialDate>())
        {
            Assert.True(date.Earliest <= date.Latest);
        }
    }

    private static void Tile(string text)
    {
        LineSyntax line = Single(text);
        int at = 0;
        foreach (Token token in line.Tokens)
        {
            Assert.True(token.Span.Start == at && token.Span.Length > 0, $"{token.Kind} at {token.Span.Start}, expected {at} in `{text}`");
            at = token.Span.End;
        }

        Assert.Equal(text.Length, at);
    }

    private static LineSyntax Single(string text) => Assert.Single(NoteSyntax.Parse("\n" + text).Lines.Skip(1));
}
