using CsCheck;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;
using Meaning = HealthNotes.Tests.Support.Meaning;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>What holds for every text, however odd.</summary>
public class LineProperties
{
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;

    private static readonly string[] RightLines =
    [
        .. File.ReadAllText(Repository.PathOf("grammar/LANGUAGE.md")).ReplaceLineEndings("\n").Split("```hnote\n").Skip(1)
            .SelectMany(block => block.Split("```")[0].Split('\n')).Select(line => line.Trim()).Where(line => line.Length > 0 && line[0] is not ('#' or '>')),
    ];

    [Fact]
    public void Printing_the_tree_gives_back_the_text() => Soup.Note.ForAll(
        text => Assert.Equal(text, NoteSyntax.Parse(text).Print()), iter: Effort.Times(600));

    [Fact]
    public void Tokens_tile_the_line() => Soup.Line.ForAll(Tile, iter: Effort.Times(3_000));

    /// <summary>
    /// What a line that is read holds is never skipped in silence: each letter and each digit lies in a token that is a meaning or a remark.
    /// Between tokens there are only blanks and marks.
    /// </summary>
    [Fact]
    public void No_letter_and_no_digit_is_left_unread() => Soup.Line.ForAll(
        text =>
        {
            LineSyntax line = Single(text);
            string marks = line.Kind == LineKind.EntryHead ? "Tt" : "";
            Assert.All(line.Tokens.Where(token => token.Kind == TokenKind.Blank && line.Problems.IsEmpty), token =>
                Assert.All(token.Span.In(text).ToArray(), c => Assert.True(!char.IsLetterOrDigit(c) || marks.Contains(c), $"`{c}` is left unread")));
        },
        iter: Effort.Times(3_000));

    /// <summary>What is passed over is a small word of the table, or repeats what the line says.</summary>
    [Fact]
    public void Only_small_words_are_passed_over() => Soup.Item.ForAll(
        text =>
        {
            LineSyntax line = Single(text);
            if (line.Problems.IsEmpty)
            {
                None.Wrong(line.Marks.Where(mark => mark.Kind == TokenKind.Filler).Select(mark => mark.Span.In(text).ToString()).Where(word => !IsSmall(word, line))
                    .Select(word => $"`{word}` is passed over in `{text}`"));
            }
        },
        iter: Effort.Times(3_000));

    [Fact]
    public void Problems_lie_inside_their_line() => Soup.Line.ForAll(
        text => Assert.All(Single(text).Problems, problem =>
        {
            Assert.InRange(problem.Span.Start, 0, text.Length - 1);
            Assert.InRange(problem.Span.Length, 1, text.Length - problem.Span.Start);
            Assert.Contains(problem.Rule, ProblemRules.All);
            Assert.NotEmpty(problem.Message);
        }),
        iter: Effort.Times(3_000));

    /// <summary>Whole or nothing: of a line with a problem no value, sign, plan or count is used.</summary>
    [Fact]
    public void A_line_with_a_problem_holds_nothing() => Soup.Line.ForAll(
        text =>
        {
            LineSyntax line = Single(text);
            Assert.True(line.Problems.IsEmpty || line.Items.IsEmpty, $"`{text}` has a problem, and is read as {MeaningOf(line)}");
            Assert.True(line.Problems.Length <= 1, $"`{text}` has {line.Problems.Length} problems");
        },
        iter: Effort.Times(3_000));

    /// <summary>The same where a line that is right was changed in one place.</summary>
    [Fact]
    public void A_right_line_with_a_slip_is_whole_or_nothing() => Gen.Select(Gen.OneOf(RightLines), Gen.Int[0, 200], Gen.OneOf("x", "", " ", "9", "/", "-", "no ", "~", ",", "zz")).ForAll(
        (right, place, slip) =>
        {
            int index = place % (right.Length + 1);
            string text = right[..index] + slip + right[Math.Min(right.Length, slip.Length == 0 ? index + 1 : index)..];
            LineSyntax line = Single(text);
            Assert.True(line.Problems.IsEmpty || line.Items.IsEmpty, $"`{text}` has a problem, and is read as {MeaningOf(line)}");
        },
        iter: Effort.Times(6_000));

    [Fact]
    public void What_is_not_understood_is_flagged_and_what_is_flagged_is_marked() => Soup.Line.ForAll(
        text =>
        {
            LineSyntax line = Single(text);
            if (line.Problems.IsEmpty)
            {
                Assert.DoesNotContain(line.Marks, token => token.Kind == TokenKind.Unknown);
                Assert.Equal(line.Kind == LineKind.Item, line.Items.Length > 0);
            }
        },
        iter: Effort.Times(3_000));

    [Fact]
    public void Nothing_throws_and_every_derived_value_can_be_asked_for() => Soup.Note.ForAll(
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

    private static string MeaningOf(LineSyntax line) => string.Join(" | ", line.Items.Select(Meaning.Of));

    private static bool IsSmall(string word, LineSyntax line) => Words.Small.Find(string.Join(' ', word.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))) is not null
        || line.Items.Any(item => Words.LineWords.Find(word) == item.Word)
        || Words.Fixed("dose-event").Find(word) is not null;

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
