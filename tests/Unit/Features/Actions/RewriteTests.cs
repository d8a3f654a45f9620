namespace HealthNotes.Tests.Features.Actions;

public class RewriteTests
{
    private const string Log = "species dog\n2026-11-01 log\n";

    [Theory]
    [InlineData("weight 21.|4kg", "weight 47.2lb")]
    [InlineData("weight ~4.2kg| # on her scale", "weight ~9lb 4oz # on her scale")]
    [InlineData("weight 3.6287kg|", "weight 8lb")]
    [InlineData("weight |350g", "weight 12.3oz")]
    [InlineData("weight 47lb 3|oz", "weight 21.4kg")]
    [InlineData("weight 9|lb 4oz", "weight 4.2kg")]
    [InlineData("weight 50|lb", "weight 22.7kg")]
    [InlineData("weight 9lb 2|oz", "weight 4.14kg")]
    [InlineData("weight 12.3oz|", "weight 349g")]
    [InlineData("weight 83.2-55.9kg|", "weight 183.4-123.2lb")]
    [InlineData("weight 183.4-123.2lb|", "weight 83.2-55.9kg")]
    [InlineData("temp 38.6|C rectal", "temp 101.5F rectal")]
    [InlineData("temp 101.5F|", "temp 38.6C")]
    [InlineData("glucose 8.2mmol/L|", "glucose 148mg/dL")]
    [InlineData("glucose 148mg/dL|", "glucose 8.2mmol/L")]
    [InlineData("lump L-flank 12|x9mm soft", "lump L-flank 0.47x0.35in soft")]
    [InlineData("lump L-flank 1.2cm|", "lump L-flank 0.47in")]
    [InlineData("lump L-flank 1/2in|", "lump L-flank 13mm")]
    [InlineData("lump L-flank 0.5in|", "lump L-flank 13mm")]
    [InlineData("water 900ml|", "water 30.4floz")]
    [InlineData("water 2 cups|", "water 473ml")]
    [InlineData("food kibble 60g|", "food kibble 2.1oz")]
    public void A_value_in_the_other_system(string line, string? expected) => Check(line, "convert-unit", expected);

    /// <summary>Counts have no other system; doses and limits are as they were ordered.</summary>
    [Theory]
    [InlineData("hr 18/15|s")]
    [InlineData("hr 72|")]
    [InlineData("crt 1.5s|")]
    [InlineData("bcs 5/9|")]
    [InlineData("gave benazepril 5|mg")]
    [InlineData("med benazepril 5|mg every 24h")]
    [InlineData("lump L-flank like pea|")]
    [InlineData("temp 38.6C rect|al")]
    [InlineData("ate 3/4|")]
    [InlineData("walk 30min 2km|")]
    public void What_is_not_converted(string line) => Offers.None(Log + line, "convert-unit");

    [Fact]
    public void Limits_are_not_converted() => Offers.None("call-if temp >39.5|C", "convert-unit");

    [Theory]
    [InlineData("B|AR", "alert bright")]
    [InlineData("  T 38.6C |rectal   # WNL", "  temp 38.6C rectal   # WNL")]
    [InlineData("OS cle|ar", "eye L clear")]
    [InlineData("SRR 8|/30s", "rr 8/30s asleep")]
    [InlineData("0730 P 18/15s|", "07:30 hr 18/15s")]
    [InlineData("med benazepril 5mg PO BID|", "med benazepril 5mg oral every 12h")]
    [InlineData("med benazepril 5mg q12h|", "med benazepril 5mg every 12h")]
    [InlineData("wound L-thigh CDI|", "wound L-thigh clean dry closed")]
    [InlineData("gums NAD|", "gums ok")]
    [InlineData("gums pi|nk", null)]
    [InlineData("lump L-flank 12mm|", null)]
    [InlineData("OS claer|", null)]
    [InlineData("ask is BID right?|", null)]
    [InlineData("BAR|🐶", "alert bright🐶")]
    [InlineData("T 38.6 P 84| R 20", "temp 38.6C, hr 84, rr 20")]
    public void Abbreviations_of_a_line(string line, string? expected) => Check(line, "expand-abbreviations", expected);

    [Fact]
    public void Abbreviations_of_an_entry_and_of_the_note()
    {
        const string note = "species dog\n2026-11-01 log\n  B|AR # x\n  gums pink\n  OD clear\n2026-11-02 log\n  MM pink\n  > BAR\n";
        Offers.Rewrite(note, "expand-abbreviations", "species dog\n2026-11-01 log\n  alert bright # x\n  gums pink\n  eye R clear\n2026-11-02 log\n  MM pink\n  > BAR\n", which: 1);
        Offers.Rewrite(note, "expand-abbreviations", "species dog\n2026-11-01 log\n  alert bright # x\n  gums pink\n  eye R clear\n2026-11-02 log\n  gums pink\n  > BAR\n", which: 2);
        Assert.Equal(["Write the abbreviations of 2 lines in plain words", "Write all abbreviations of this note in plain words"],
            Offers.Titles("2026-11-01 log\n  ‹BAR\n  OD clear›\n", "expand-abbreviations"));
    }

    [Theory]
    [InlineData("lump L-fla|nk 12mm", "other-side", new[] { "Write `R-flank`" })]
    [InlineData("paw RF| cut", "other-side", new[] { "Write `LF`" })]
    [InlineData("lump fla|nk 12mm", "which-side", new[] { "Write `L-flank`", "Write `R-flank`", "Write `both-flank`" })]
    [InlineData("lump pa|w 12mm", "which-side", new[] { "Write `LF-paw`", "Write `RF-paw`", "Write `LH-paw`", "Write `RH-paw`" })]
    [InlineData("lump nose| 12mm", "which-side", new string[0])]
    [InlineData("tooth 208| tartar", "which-side", new string[0])]
    [InlineData("OS| clear", "other-side", new string[0])]
    [InlineData("lump both-flank| 12mm", "other-side", new string[0])]
    public void The_side_of_a_place(string line, string id, string[] expected) => Assert.Equal(expected, Offers.Titles(Log + line, id));

    [Fact]
    public void The_side_is_written_at_the_place() => Check("ear L|, wax # x", "other-side", "ear R, wax # x");

    private static void Check(string line, string id, string? expected)
    {
        if (expected is null)
        {
            Offers.None(Log + line, id);
        }
        else
        {
            Offers.Rewrite(Log + line, id, Log + expected);
        }
    }
}
