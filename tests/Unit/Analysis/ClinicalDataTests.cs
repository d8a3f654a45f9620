using System.Reflection;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Tests.Analysis;

/// <summary>The data files themselves: complete, ordered, sourced, and in step with the publications they name.</summary>
public class ClinicalDataTests
{
    private static readonly Assembly Data = typeof(ClinicalTables).Assembly;
    private static readonly string[] Stages = ["newborn", "growing", "young-adult", "mature", "senior"];
    private static readonly string?[] Sizes = [null, "small", "medium", "large", "giant"];
    private static readonly string[] States = ["asleep", "rest", "any", "on-insulin", "before-food", "after-food"];
    private static readonly string?[] Places = [null, "rectal", "ear", "armpit"];
    private static readonly string[] Vitals = ["hr", "rr", "temp", "crt", "bcs", "mcs", "pain", "glucose", "water"];

    public static TheoryData<string> Tables =>
        [.. Data.GetManifestResourceNames().Where(name => name.EndsWith(".tsv", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_row_has_a_source(string table) =>
        Assert.All(TsvTable.Load(Data, table).Rows, row => Assert.NotEqual("", row["source"]));

    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_table_is_told_of_in_the_readme(string table) =>
        Assert.Contains($"| `{table}` |", File.ReadAllText(Support.Repository.PathOf("server/Record/Data/README.md")), StringComparison.Ordinal);

    public static TheoryData<string> AloneUrgent => [.. PhoneNow.All.Where(row => row.With.Length == 0)
        .SelectMany(row => (row.Animal == "both" ? ["dog", "cat"] : new[] { row.Animal[^3..] }).SelectMany(animal => row.Signs.Select(sign => $"{animal}: {LineOf(sign)}")))];

    public static TheoryData<string> UrgentTogether => [.. PhoneNow.All.Where(row => row.With.Length > 0).Select(row => row.What)];

    /// <summary>The sheet, the card and the rules agree on what cannot wait.</summary>
    [Theory]
    [MemberData(nameof(AloneUrgent))]
    public void A_sign_that_the_sheet_says_to_phone_for_is_urgent(string line) =>
        Assert.Equal(FindingLevel.Urgent, line[..3] == "dog" ? MarkedFindings.LevelForDog(line[5..]) : MarkedFindings.LevelForCat(line[5..]));

    [Theory]
    [MemberData(nameof(UrgentTogether))]
    public void Signs_together_are_urgent(string what)
    {
        PhoneNow row = PhoneNow.All.Single(one => one.What == what);
        string born = row.Animal == "young" ? "2026-08-20" : "2020-05-01";
        string lines = string.Concat(row.With.Select(one => one[0]).Prepend(row.Signs[0]).Select(sign => $"12:00 {LineOf(sign)}\n"));
        Assert.Contains(MarkedFindings.Read($"pet Marlow\nspecies dog\nborn {born}\nadult-weight 15kg\n2026-11-20 log\n{lines}").Findings, finding => finding is { Rule: "together", Level: FindingLevel.Urgent });
    }

    private static string LineOf(SignPattern sign) => sign.Limit is null ? $"{sign.Part} {(sign.Part == "pain-site" ? "L-hip " : "")}{sign.Sign}".TrimEnd() : sign.Part == "temp" ? "temp 40.2C" : $"{sign.Part} 4mmol/L";

    [Fact]
    public void Equally_full_selectors_never_match_the_same_reading()
    {
        foreach (ReadingKey key in AllKeys())
        {
            Assert.True(LevelLine.Of(key).Select(line => Cells(line.For)).Distinct().Count() <= 1, key.ToString());
        }
    }

    [Fact]
    public void Levels_lie_outward_from_normal()
    {
        foreach (ReadingKey key in AllKeys())
        {
            foreach (IGrouping<bool, LevelLine> side in LevelLine.Of(key).Where(line => line.Repeat == 1).GroupBy(line => line.Above))
            {
                decimal[] values = [.. side.OrderBy(line => line.Level).Select(line => line.Value)];
                Assert.Equal(side.Key ? values.Order() : values.OrderDescending(), values);
            }
        }
    }

    [Fact]
    public void A_value_in_the_normal_range_crosses_no_line()
    {
        foreach (ReadingKey key in AllKeys())
        {
            if (ClinicalTables.Default.NormalFor(key) is not { } normal)
            {
                continue;
            }

            foreach (LevelLine line in LevelLine.Of(key))
            {
                Assert.True(line.Above ? normal.High is null || normal.High <= line.Value : normal.Low is null || normal.Low >= line.Value, $"{key}: {line}");
            }
        }
    }

    [Theory]
    [InlineData("hr")]
    [InlineData("rr")]
    [InlineData("temp")]
    [InlineData("crt")]
    public void Every_grown_or_growing_animal_has_a_range(string vital)
    {
        foreach (ReadingKey key in AllKeys().Where(k => k.What == vital && k.Stage != "newborn" && k.State is "asleep" or "rest" or "any"))
        {
            bool stateFits = (vital is "hr" or "rr") == (key.State != "any");
            Assert.True(!stateFits || key.What != vital || ClinicalTables.Default.NormalFor(key) is not null, key.ToString());
        }
    }

    /// <summary>Figures read in the publications, compared with what the tables give.</summary>
    [Theory]
    [InlineData("rr", "cat", "mature", "asleep", null, 30, FindingLevel.Call, 2)] // Ljungvall et al., J Feline Med Surg 2014: several sleeping counts above 30
    [InlineData("rr", "dog", "mature", "asleep", null, 30, FindingLevel.Call, 2)] // Rishniw et al., Res Vet Sci 2012: healthy dogs sleep below 30
    [InlineData("hr", "dog", "mature", "rest", null, 180, FindingLevel.Urgent, 1)] // Merck Veterinary Manual, triage parameter table: tachycardia above 180
    [InlineData("hr", "cat", "mature", "rest", null, 220, FindingLevel.Urgent, 1)] // the same table: above 220
    [InlineData("temp", "dog", "mature", "any", "rectal", 39.5, FindingLevel.Call, 1)] // Dorn et al. 2024: high end of healthy dogs; VIN: phone above 103 F (39.44 C)
    [InlineData("temp", "cat", "mature", "any", "rectal", 38.9, FindingLevel.Watch, 1)] // Levy et al. 2015: upper limit 38.9
    [InlineData("crt", "dog", "mature", "any", null, 2, FindingLevel.Watch, 1)] // Merck Veterinary Manual: slow above 2 s
    public void Upper_lines_are_where_the_publication_draws_them(string what, string species, string stage, string state, string? place, double value, FindingLevel level, int repeat)
    {
        var key = new ReadingKey(what, Enum.Parse<Species>(species, ignoreCase: true), stage, null, state, place);
        Assert.Contains(LevelLine.Of(key), line => line.Above && line.Level == level && line.Repeat == repeat && line.Value == (decimal)value);
    }

    [Fact]
    public void Levy_2015_is_the_range_shown_for_cats()
    {
        NormalRange? range = ClinicalTables.Default.NormalFor(new ReadingKey("temp", Species.Cat, "mature", null, "any", "rectal"));
        Assert.Equal((36.7m, 38.9m), (range?.Low, range?.High));
    }

    private static string Cells(Selector s) => string.Join('/', s.Stages.Concat(s.Sizes).Concat(s.States).Concat(s.Places));

    private static IEnumerable<ReadingKey> AllKeys() =>
        from what in Vitals
        from species in new[] { Species.Dog, Species.Cat }
        from stage in Stages
        from size in Sizes
        from state in States
        from place in Places
        select new ReadingKey(what, species, stage, size, state, place);
}
