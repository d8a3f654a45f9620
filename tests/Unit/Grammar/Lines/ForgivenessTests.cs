using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>Order, case, spacing, commas, decimal marks, synonyms and trade abbreviations are free: each pair says the same.</summary>
public class ForgivenessTests
{
    [Theory]
    [InlineData("weight 21.4kg", "WEIGHT 21,4 KG")]
    [InlineData("weight 21.4kg", "   weight:   21.4\tkg  ")]
    [InlineData("weight 21.4kg", "Weighed 21.4 kilos")]
    [InlineData("weight 21.4kg", "wt 21.4kg")]
    [InlineData("weight 21.4kg", "weight 21.40kg")]
    [InlineData("gums pink moist", "MM pink, moist")]
    [InlineData("gums pink moist", "gums pink; moist")]
    [InlineData("gums pink moist", "mucous-membranes rosy wet")]
    [InlineData("crt 1s", "CRT 1 sec")]
    [InlineData("bcs 5/9", "BCS 5 / 9")]
    [InlineData("rr 20 asleep", "SRR 20")]
    [InlineData("rr 20 asleep", "rr asleep 20")]
    [InlineData("rr 20 asleep", "Breathing 20, sleeping")]
    [InlineData("eye L clear", "OS clear")]
    [InlineData("eye R clear", "eye OD clear")]
    [InlineData("eye both clear", "OU clear")]
    [InlineData("ear L wax", "AS wax")]
    [InlineData("ear R wax", "ear AD wax")]
    [InlineData("ear both wax", "AU waxy")]
    [InlineData("alert bright", "alert BAR")]
    [InlineData("limb LF lame", "limb left-front limping")]
    [InlineData("limb RF lame", "limb rf lame")]
    [InlineData("limb LH lame", "limb left hind lame")]
    [InlineData("limb RH lame", "limb Right-Rear lame")]
    [InlineData("joint L-knee stiff", "joints stiff stifle left")]
    [InlineData("med benazepril 5mg oral every 12h", "rx benazepril 5 mg PO BID")]
    [InlineData("med benazepril 5mg oral every 12h", "med benazepril q12h by mouth 5mg")]
    [InlineData("med benazepril 5mg every 12h as needed", "med benazepril 5mg BID PRN")]
    [InlineData("lump L-flank 12mm soft", "mass soft 12 mm L flank")]
    [InlineData("lump L-flank like pea", "lump like a pea, left flank")]
    [InlineData("temp 38.6C rectal", "T 38,6°C rectally")]
    [InlineData("vomit bile 2x", "vomited 2 x yellow fluid")]
    [InlineData("18:30 stool soft 2x", "6:30pm BM 2x soft")]
    [InlineData("00:15 pee", "12:15am wee")]
    [InlineData("12:15 pee", "12:15PM pee")]
    [InlineData("gums brick-red", "gums brick   red")]
    [InlineData("recheck ear L in 2w", "Recheck Ear L In 2 Weeks")]
    [InlineData("recheck ear L in 2w", "recheck AS in 2w")]
    [InlineData("skip ear both", "not-examined ears both")]
    public void Says_the_same(string plain, string written) => Assert.Equal(Meaning.Of(Marked.Item(plain)), Meaning.Of(Marked.Item(written)));

    [Theory]
    [InlineData("2026-10-04 08:15 check by Ann", "2026-10-4 8:15 CHECK BY Ann")]
    [InlineData("2026-10-04 08:15 check by Ann", "  2026-10-04T08:15, check, by Ann")]
    [InlineData("2026-10-04 08:15 check by Ann", "2026-10-04: check 8:15am by Ann  # at home")]
    [InlineData("2026-10-04 log", "2026-10-04")]
    public void Heads_say_the_same(string plain, string written) => Assert.Equal(Head(plain), Head(written));

    private static EntryHead Head(string line) => Marked.CheckLines(line).Lines[0].EntryHead! with { DateSpan = default };
}
