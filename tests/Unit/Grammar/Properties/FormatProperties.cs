using CsCheck;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;
using Meaning = HealthNotes.Tests.Support.Meaning;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>What <c>format</c> may do to a note: change its looks, never what it says.</summary>
public class FormatProperties
{
    [Fact]
    public void Format_is_idempotent() => Soup.Note.ForAll(
        text =>
        {
            string once = Formatted(text);
            Assert.Equal(once, Formatted(once));
        },
        iter: Effort.Times(600));

    [Fact]
    public void Format_keeps_the_meaning() => Soup.Note.ForAll(
        text => Assert.Equal(Meaning.Of(Note.Read(text)), Meaning.Of(Note.Read(Formatted(text)))),
        iter: Effort.Times(600));

    /// <summary>The same line by line, where more lines can be tried; the owner's own words for what was seen stay.</summary>
    [Fact]
    public void A_formatted_line_says_the_same_in_the_owners_words() => Soup.Item.ForAll(
        text =>
        {
            string formatted = Formatted(text);
            LineSyntax line = NoteSyntax.Parse(text).Lines[0];
            LineSyntax again = NoteSyntax.Parse(formatted).Lines[0];
            Assert.Equal(MeaningPrinter.Print(line), MeaningPrinter.Print(again));
            Assert.Equal(Meaning.Of(line.Items), Meaning.Of(again.Items));
            string plain = Plain(formatted);
            string written = Plain(text);
            None.Wrong(line.Items.SelectMany(item => item.Words.Concat(item.Absent)).Select(sign => sign.Text)
                .Where(word => Plain(word) is var own && written.Contains(own, StringComparison.Ordinal) && !plain.Contains(own, StringComparison.Ordinal))
                .Select(word => $"`{word}` is lost: {text} -> {formatted}"));
        },
        iter: Effort.Times(1_500));

    /// <summary>Each spelling of each describing word, alone. That nothing happened, or is over, is written in one way.</summary>
    [Fact]
    public void Format_keeps_every_spelling_of_a_describing_word() => None.Wrong(
        from word in NoteVocabulary.Default.LineWords.Terms
        where word.Has(SlotKind.Words)
        from spelling in NoteVocabulary.Default.Describing(word.Word).Spellings
        let text = $"{word.Word} {word.Word switch { "lump" or "wound" or "pain-site" => "L-flank ", "hr" or "rr" => "72 ", "bcs" => "5/9 ", _ => "" }}{spelling}"
        where NoteVocabulary.Default.Describing(word.Word).Find(spelling) is not { Word: "none" or "gone" or "resolved" } && NoteVocabulary.Default.Fixed("portion").Find(spelling) is null
        where !Formatted(text).Contains(spelling, StringComparison.OrdinalIgnoreCase)
        select $"{text} -> {Formatted(text)}");

    [Fact]
    public void Format_keeps_every_comment_every_free_text_and_every_line_with_a_problem() => Soup.Note.ForAll(
        text => Assert.Equal(Kept(text), Kept(Formatted(text))), iter: Effort.Times(600));

    private static string Plain(string text) => string.Join(' ', text.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Formatted(string text) => NoteFormatter.Format(NoteSyntax.Parse(text));

    private static IEnumerable<string> Kept(string text) => NoteSyntax.Parse(text).Lines.SelectMany(line => line.Marks
        .Where(mark => mark.Kind == TokenKind.Comment)
        .Select(mark => mark.Span.In(line.Text).TrimEnd().ToString())
        .Append(line.Kind == LineKind.FreeText ? line.FreeText : line.Problems.IsEmpty ? "" : line.Text)
        .Where(kept => kept.Length > 0));
}
