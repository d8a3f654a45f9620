using CsCheck;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis;

public class FindingPropertyTests
{
    private static readonly string[] FarOutside = ["hr 200", "hr 30", "rr 60 asleep", "temp 41.5C", "temp 35C", "crt 4s", "bcs 1/9", "bcs 9/9", "glucose 2mmol/L"];

    private static string Entry(string line) => $"pet X\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n2026-11-01 check\n  {line}";

    [Fact]
    public void The_unit_a_value_is_written_in_changes_no_level() => Gen.Int[300, 440].ForAll(tenths =>
    {
        decimal celsius = tenths / 10m;
        Assert.Equal(
            MarkedFindings.LevelOfLastLine(Entry($"temp {celsius}C")),
            MarkedFindings.LevelOfLastLine(Entry($"temp {celsius * 1.8m + 32}F")));
    });

    [Fact]
    public void A_reading_further_out_is_never_weaker() => Gen.Select(Gen.Int[141, 390], Gen.Int[1, 9]).ForAll((rate, more) =>
        Assert.True(MarkedFindings.LevelOfLastLine(Entry($"hr {rate}")) <= MarkedFindings.LevelOfLastLine(Entry($"hr {rate + more}"))));

    [Fact]
    public void A_reading_far_outside_is_never_silent() => Gen.Int[0, FarOutside.Length - 1].Select(index => FarOutside[index]).ForAll(line =>
        Assert.True(MarkedFindings.LevelOfLastLine(Entry(line)) >= FindingLevel.Call, line));

    [Fact]
    public void The_order_of_entries_in_the_file_changes_no_finding() => Gen.Shuffle(new[] { 1, 2, 3, 4, 5, 6 }).ForAll(order =>
    {
        IEnumerable<string> Findings(int[] days)
        {
            string note = "pet X\nspecies dog\nborn 2020-05-01\n" + string.Concat(days.Select(day => $"2026-11-0{day} log\n  rr {28 + day} asleep\n  lump L-flank {10 + day}mm\n"));
            NoteAnalysis analysis = MarkedFindings.Read(note);
            return analysis.Findings.Select(f => $"{analysis.Note.EntryAt(f.Line)?.Head.Date} {f.Rule} {f.Level}").Order(StringComparer.Ordinal);
        }

        Assert.Equal(Findings([1, 2, 3, 4, 5, 6]), Findings(order));
    });

    [Fact]
    public void The_same_note_and_day_give_the_same_findings() => Gen.String.ForAll(text =>
    {
        Func<NoteFinding, string> show = f => f.ToString() + string.Join(',', f.Evidence);
        Assert.Equal(MarkedFindings.Read(text).Findings.Select(show), MarkedFindings.Read(text).Findings.Select(show));
    });
}
