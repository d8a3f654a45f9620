using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Units, counting times and scales behind a number.</summary>
public class NumberCompletionTests
{
    private const string Dog = "species dog\n2026-10-04 check\n";

    [Theory]
    [InlineData("hr 18|", "/15s /30s /6s /10s /1min")]
    [InlineData("hr 18/|", "/15s /30s /6s /10s /1min")]
    [InlineData("hr 18/3|", "/30s")]
    [InlineData("weight 21|", "kg lb oz")]
    [InlineData("weight 21k|", "kg")]
    [InlineData("weight 21 k|", "kg")]
    [InlineData("weight 21,4|", "kg lb oz")]
    [InlineData("weight 83.2-55.9|", "kg lb oz")]
    [InlineData("weight 83.2-|", "")]
    [InlineData("temp 38.6|", "C")]
    [InlineData("temp 101|", "F")]
    [InlineData("crt 1|", "s")]
    [InlineData("crt <2|", "s")]
    [InlineData("glucose 148|", "mg/dL")]
    [InlineData("bcs 5|", "/9 /5")]
    [InlineData("pain 2|", "/10")]
    [InlineData("murmur 3|", "/6")]
    [InlineData("girth 52|", "cm")]
    [InlineData("stool 3|", "/7")]
    [InlineData("lump L-flank 12|", "mm cm in")]
    [InlineData("lump L-flank ~12x9|", "mm cm in")]
    [InlineData("ate 3|", "/4 /2 /3")]
    [InlineData("vomit 2|", "x")]
    [InlineData("walk 20|", "min s h km mi")]
    [InlineData("recheck ear in 3|", "3mo h d w mo y")]
    [InlineData("07:30 water 900|", "ml")]
    public void The_units_that_fit(string line, string expected) =>
        Assert.StartsWith(expected, string.Join(' ', Offered.Labels($"{Dog}  {line}")), StringComparison.Ordinal);

    [Theory]
    [InlineData("hr 18|", "/15s", "hr 18/15s")]
    [InlineData("hr 18/1|", "/15s", "hr 18/15s")]
    [InlineData("weight 21|", "kg", "weight 21kg")]
    [InlineData("weight 21 k|", "kg", "weight 21kg")]
    [InlineData("lump L-flank 12| soft", "mm", "lump L-flank 12mm soft")]
    [InlineData("gave benazepril 1/2|", "tablet", "gave benazepril 1/2 tablet")]
    [InlineData("gave benazepril 2 ta|", "tablet", "gave benazepril 2 tablet")]
    [InlineData("vomit 2|", "x", "vomit 2x")]
    public void They_go_behind_the_number(string line, string label, string expected) =>
        Assert.Equal($"{Dog}  {expected}", Offered.Taking($"{Dog}  {line}", label));

    [Theory]
    [InlineData("hr 18|", "/15s", "72 a minute")]
    [InlineData("rr 8|", "/30s", "16 a minute")]
    [InlineData("temp 101|", "F", "= 38.3 °C")]
    public void What_it_would_come_to_stands_beside_it(string line, string label, string detail) =>
        Assert.Equal(detail, Offered.Item($"{Dog}  {line}", label).Detail);

    [Theory]
    [InlineData("weight 21|", UnitsShown.Us, "lb")]
    [InlineData("weight 21|", UnitsShown.AsNoted, "kg")]
    [InlineData("lump L-flank 2|", UnitsShown.Us, "in")]
    public void The_readers_units_come_first(string line, UnitsShown units, string first) =>
        Assert.Equal(first, Offered.At(Cursor.In($"{Dog}  {line}"), units).Items[0].Label);

    [Fact]
    public void The_note_says_which_units_are_its_own() => Assert.Equal("lb", Offered.Labels("units us\n2026-10-04\n  weight 21|")[0]);

    [Fact]
    public void The_unit_of_the_plan_is_the_first_behind_a_dose()
    {
        CompletionItem first = Offered.At("med fish oil 5ml every day\n2026-10-04\n  gave fish oil 5|").Items[0];
        Assert.Equal(("ml", true), (first.Label, first.Preselect));
    }

    [Theory]
    [InlineData("tooth 20|")]
    [InlineData("hr |")]
    [InlineData("gums 2|")]
    [InlineData("mood 12|")]
    public void No_units_where_none_fit(string line) =>
        Assert.DoesNotContain(Offered.At($"{Dog}  {line}").Items, item => item.Kind == CompletionKind.Unit);
}
