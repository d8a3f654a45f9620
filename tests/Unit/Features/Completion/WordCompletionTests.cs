using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Words for what was seen, states, comparisons.</summary>
public class WordCompletionTests
{
    private const string Dog = "species dog\n2026-10-04 check\n";

    [Fact]
    public void Expected_words_come_first_and_the_urgent_last()
    {
        CompletionItem[] words = [.. Offered.At($"{Dog}  gums |").Items.Where(item => item.Kind == CompletionKind.Describing)];
        string[] levels = [.. words.Select(word => word.Detail).Distinct()];
        Assert.Equal("as expected", levels[0]);
        Assert.True(Array.FindIndex(words, w => w.Label == "pink") < Array.FindIndex(words, w => w.Label == "pale"));
        Assert.True(Array.FindIndex(words, w => w.Label == "pale") < Array.FindIndex(words, w => w.Label == "blue"));
        Assert.Equal("a reason to phone the clinic", words.First(w => w.Label == "pale").Detail);
        Assert.Equal("cannot wait: phone now", words.First(w => w.Label == "blue").Detail);
        Assert.Equal("worth watching", words.First(w => w.Label == "tacky").Detail);
    }

    [Theory]
    [InlineData("species cat\nsex male\n", "cannot wait: phone now")]
    [InlineData("species cat\nsex female\n", "a reason to phone the clinic")]
    public void A_level_is_that_of_this_animal(string pet, string level)
    {
        CompletionItem straining = Offered.Item(pet + "2026-10-04\n  pee str|", "straining");
        Assert.Equal(level, straining.Detail);
        Assert.Contains(level, CompletionFeature.Resolve(straining.Key!), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gums pink |", "pink", false)]
    [InlineData("gums pink |", "ok", false)]
    [InlineData("gums |", "ok", true)]
    [InlineData("gums | pink", "pink", false)]
    [InlineData("rr 8/30s |", "asleep", true)]
    [InlineData("rr 8/30s rest |", "asleep", false)]
    [InlineData("temp 38.6C |", "rectal", true)]
    [InlineData("temp 38.6C rectal |", "ear", false)]
    [InlineData("temp 38.6C rectal |", "panting", true)]
    [InlineData("weight 21kg |", "asleep", false)]
    [InlineData("else |", "ok", true)]
    [InlineData("ate |", "half", true)]
    [InlineData("ate 3/4 |", "half", false)]
    [InlineData("mcs |", "moderate", true)]
    [InlineData("lump L-flank |", "like", true)]
    [InlineData("belly no |", "bloated", true)]
    [InlineData("belly no |", "ok", false)]
    [InlineData("eye L not |", "red", true)]
    [InlineData("stitches 13/14 |", "clean", true)]
    [InlineData("hr 72 |", "pink", false)]
    public void What_the_line_may_still_hold(string line, string label, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"{Dog}  {line}").Contains(label));

    [Theory]
    [InlineData("alert BAR|", "BAR: bright", "alert bright")]
    [InlineData("lump L-flank like ping|", "table-tennis-ball", "lump L-flank like table-tennis-ball")]
    [InlineData("lump L-flank like a wal|", "walnut", "lump L-flank like a walnut")]
    [InlineData("rr 8/30s slee|", "asleep", "rr 8/30s asleep")]
    [InlineData("gums re|", "brick-red", "gums brick-red")]
    public void Words_are_found_by_their_other_names(string line, string label, string expected) =>
        Assert.Equal($"{Dog}  {expected}", Offered.Taking($"{Dog}  {line}", label));

    [Fact]
    public void Only_things_come_after_like() =>
        Assert.All(Offered.At($"{Dog}  lump L-flank like |").Items, item => Assert.Equal(CompletionKind.Comparison, item.Kind));

    [Fact]
    public void A_thing_has_its_size_beside_it() => Assert.Equal("about 8.5 mm (7 to 10)", Offered.Item($"{Dog}  lump L-flank like |", "pea").Detail);

    [Theory]
    [InlineData("food |", "salmon biscuits", true)]
    [InlineData("food sal|", "salmon biscuits", true)]
    [InlineData("food liver |", "salmon biscuits", false)]
    [InlineData("food 60g |", "salmon biscuits", false)]
    public void Foods_are_those_of_this_note(string line, string label, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"2026-10-03\n  food dry salmon biscuits 60g\n2026-10-04\n  {line}").Contains(label));

    [Theory]
    [InlineData("recheck |", "ear", true)]
    [InlineData("skip |", "ear", true)]
    [InlineData("skip |", "ask", false)]
    [InlineData("recheck ear L |", "in 2w", true)]
    [InlineData("recheck ear L in 2w |", "in 2w", false)]
    [InlineData("due worming |", "in 3mo", true)]
    public void Tasks_name_items_and_days(string line, string label, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"{Dog}  {line}").Contains(label));

    [Fact]
    public void A_day_ahead_says_which_it_is() =>
        Assert.Equal("two weeks: Sunday 2026-10-18", Offered.Item($"{Dog}  recheck ear in |", "2w").Detail);

    [Fact]
    public void What_fell_due_can_be_done()
    {
        const string due = "species dog\n2026-10-04 visit\n  due worming in 1mo\n  due booster in 1y\n2026-11-04 log\n  done worming\n2026-11-25 log\n  done |";
        Assert.Equal(["booster"], Offered.Labels(due));
    }

    [Theory]
    [InlineData("recheck ear on |", "2026-10-04")]
    [InlineData("recheck ear on 2026-1|", "2026-10-04")]
    public void Days_near_the_entry(string line, string first) => Assert.Equal(first, Offered.Labels($"{Dog}  {line}")[0]);

    [Theory]
    [InlineData("lab creatinine 110umol/L", "lab |", "creatinine")]
    [InlineData("vaccine rabies 2026-04-15 for 3y", "vaccine |", "rabies")]
    [InlineData("due nail clipping 2026-11-01", "due |", "nail clipping")]
    [InlineData("food salmon biscuits 60g", "food sal|", "salmon biscuits")]
    public void A_name_that_the_note_has_comes_first(string before, string line, string name) =>
        Assert.Equal(name, Offered.Labels($"species dog\n2026-10-04 visit\n  {before}\n2026-11-01 visit\n  {line}")[0]);
}
