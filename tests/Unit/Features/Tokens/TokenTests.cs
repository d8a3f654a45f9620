using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Tokens;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Tokens;

public class TokenTests
{
    [Theory]
    [InlineData("2026-10-04 08:15 check by Ann # x", "2026-10-04:Number/Declaration 08:15:Number check:Type by:Operator Ann:Variable # x:Comment")]
    [InlineData("  07:30 gave benazepril 5mg", "07:30:Number gave:Keyword benazepril:Variable 5mg:Number")]
    [InlineData("  lump L-flank @lower 12mm", "lump:Keyword L-flank:Property @lower:Decorator 12mm:Number")]
    [InlineData("  rr 8/30s asleep", "rr:Keyword 8/30s:Number asleep:Parameter")]
    [InlineData("  gums pink blue", "gums:Keyword pink:EnumMember blue:EnumMember/Urgent")]
    [InlineData("  gums yellow", "gums:Keyword yellow:EnumMember/Call")]
    [InlineData("  ask is it old?", "ask:Keyword is it old?:String")]
    [InlineData("  photo a b.png the ear", "photo:Keyword a b.png:Variable the ear:String")]
    [InlineData("  gums are not pale", "gums:Keyword are not:Operator pale:EnumMember")]
    [InlineData("  gums pale, eye L red", "gums:Keyword pale:EnumMember/Call eye:Keyword L:Property red:EnumMember/Call")]
    [InlineData("what is this", "")]
    [InlineData("", "")]
    [InlineData(">", ">:Operator")]
    [InlineData("  > plain", ">:Operator plain:String")]
    [InlineData("> a **b c** d", ">:Operator a:String **b c**:String/Strong d:String")]
    [InlineData("> *a* _b_ ***c***", ">:Operator *a*:String/Emphasis _b_:String/Emphasis ***c***:String/Emphasis, Strong")]
    [InlineData("> `*a*` ``b`c``", ">:Operator `*a*`:String/Code ``b`c``:String/Code")]
    [InlineData("> see [him](a.jpg) or <https://example.org> now", ">:Operator see:String [him](a.jpg):String/Link or:String <https://example.org>:String/Link now:String")]
    [InlineData("> 2 * 3 * 4 and snake_case_word **open", ">:Operator 2 * 3 * 4 and snake_case_word **open:String")]
    [InlineData("> \\*a\\* [x] (y)\\", ">:Operator \\*a\\* [x] (y)\\:String")]
    [InlineData("> \ud83d\udc36 **\ud83d\udc36**", ">:Operator \ud83d\udc36:String **\ud83d\udc36**:String/Strong")]
    public void The_tokens_of_a_line(string line, string expected)
    {
        Document note = Cursor.Note($"pet A\nspecies dog\n2026-10-04\n{line}\nnail long");
        string tokens = string.Join(' ', TokenFeature.InRange(note, PlaceRange.At(3, 0))
            .Select(token => $"{note.Syntax.Lines[3].Text.Substring(token.Start, token.Length)}:{token.Type}{(token.Modifiers == 0 ? "" : $"/{token.Modifiers}")}"));
        Assert.Equal(expected, tokens);
    }

    [Theory]
    [InlineData("species cat\nsex male\n", TokenModifiers.Urgent)]
    [InlineData("species cat\nsex female\n", TokenModifiers.Call)]
    [InlineData("species dog\nsex male\n", TokenModifiers.Call)]
    public void A_word_has_the_level_of_this_animal(string opening, TokenModifiers level)
    {
        Document note = Cursor.Note(opening + "2026-10-04\n  pee straining");
        Assert.Equal(level, TokenFeature.Full(note)[^1].Modifiers);
    }

    [Fact]
    public void The_legend_names_every_type_and_modifier()
    {
        Assert.Equal(Enum.GetNames<TokenType>().Select(Camel), TokenLegend.Types);
        Assert.Equal(Enum.GetValues<TokenModifiers>().Where(modifier => modifier != TokenModifiers.None).Order().Select(modifier => Camel($"{modifier}")), TokenLegend.Modifiers);
    }

    [Fact]
    public void Tokens_are_sorted_and_apart_and_in_their_lines() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        SemanticToken[] tokens = [.. TokenFeature.Full(note)];
        for (int index = 0; index < tokens.Length; index++)
        {
            SemanticToken token = tokens[index];
            Assert.True(token.Length > 0 && token.Start >= 0 && token.Start + token.Length <= note.Syntax.Lines[token.Line].Text.Length);
            if (index > 0)
            {
                SemanticToken before = tokens[index - 1];
                Assert.True(before.Line < token.Line || (before.Line == token.Line && before.Start + before.Length <= token.Start), note.Syntax.Lines[token.Line].Text);
            }
        }

        int half = note.Syntax.Lines.Length / 2;
        Assert.Equal(tokens.Where(token => token.Line <= half), TokenFeature.InRange(note, new PlaceRange(new(-1, 0), new(half, 0))));
        Assert.Equal(tokens.Where(token => token.Line >= half), TokenFeature.InRange(note, new PlaceRange(new(half, 99), new(9999, 0))));
    }, iter: Effort.Times(500));

    [Fact]
    public void Free_text_of_marks_alone_takes_no_time()
    {
        string hostile = string.Concat(Enumerable.Range(0, 40_000).Select(index => (index % 5) switch { 0 => "[", 1 => " *a", 2 => " **b", 3 => " `", _ => " _c <http" }));
        Document note = Cursor.Note("> " + hostile);
        var watch = System.Diagnostics.Stopwatch.StartNew();
        Assert.NotEmpty(TokenFeature.Full(note));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(2), $"{watch.Elapsed}");
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
