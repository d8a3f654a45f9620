using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Tests.Analysis;

/// <summary>A value that cannot be right is reported and used nowhere; several observations of one line stay apart.</summary>
public class WholeOrNothingTests
{
    private const string Dog = "pet Marlow\nspecies dog\nborn 2020-05-01\n";

    [Theory]
    [InlineData("adult-weight 20kg\n", "weight 0.9kg")]
    [InlineData("adult-weight 20kg\n", "weight 0kg")]
    [InlineData("2026-05-01 check\n  weight 20kg\n", "weight 0.9kg")]
    [InlineData("2026-05-01 check\n  weight 20kg\n2026-06-01 check\n  weight 21kg\n", "weight 210lb")]
    [InlineData("", "weight 500kg")]
    public void A_weight_that_is_not_this_pets_is_no_weight(string before, string line)
    {
        NoteAnalysis analysis = MarkedFindings.Read($"{Dog}{before}2026-11-01 check\n  {line}\n");
        NoteFinding finding = Assert.Single(analysis.Findings, found => found.Rule == "not-plausible");
        Assert.Equal(FindingLevel.Error, finding.Level);
        Assert.DoesNotContain(analysis.Record.Readings, reading => reading.Line == finding.Line);
        Assert.NotEqual(finding.Line, analysis.Pet.WeightOn(analysis.Today)?.Line);
        Assert.DoesNotContain(analysis.Record.All("weight").SelectMany(course => course.Lines), noted => noted.Line == finding.Line && noted.Reading is not null);
    }

    [Theory]
    [InlineData("adult-weight 40kg\n", "born 2026-08-01", "weight 5kg")]
    [InlineData("adult-weight 20kg\n", "born 2020-05-01", "weight 14kg")]
    [InlineData("2026-05-01 check\n  weight 20kg\n", "born 2020-05-01", "weight 12kg")]
    public void A_weight_it_may_have_is_kept(string before, string born, string line) =>
        Assert.DoesNotContain(MarkedFindings.Read($"pet Marlow\nspecies dog\n{born}\n{before}2026-11-01 check\n  {line}\n").Findings, found => found.Rule == "not-plausible");

    [Fact]
    public void A_slip_that_is_corrected_is_used_again()
    {
        string text = $"{Dog}2026-05-01 check\n  weight 20kg\n2026-06-01 check\n  weight 20.5kg\n2026-11-01 check\n  weight 0.9kg\n";
        NoteAnalysis before = MarkedFindings.Read(text);
        (Note note, EntryChange change) = before.Note.WithLines(8, 1, "  weight 19.9kg\n", HealthNotes.Grammar.Vocabulary.NoteVocabulary.Default);
        NoteAnalysis after = NoteAnalysis.Of(before.Record.After(note, change), before, change, CancellationToken.None);
        Assert.DoesNotContain(after.Findings, found => found.Rule == "not-plausible");
        Assert.Equal(19.9m, after.Pet.WeightOn(after.Today)?.Value.Number);
        Assert.Equal(MarkedFindings.Read(text.Replace("0.9kg", "19.9kg", StringComparison.Ordinal)).Findings, after.Findings, EqualityComparer<NoteFinding>.Create((a, b) => a!.ToString() == b!.ToString()));
    }

    [Fact]
    public void Each_observation_of_a_line_has_its_own_value_and_findings() => MarkedFindings.CheckDog("""
          T 41.5 P 240 R 20
            ^^^^ temp-range urgent
                   ^^^ hr-range urgent
        """);

    [Fact]
    public void Several_times_are_several_doses()
    {
        NoteAnalysis analysis = MarkedFindings.Read($"{Dog}med cephalexin 500mg every 12h\n2026-11-01 log\n  gave cephalexin 500mg 08:00 20:00\n");
        Assert.DoesNotContain(analysis.Findings, found => found.Rule.StartsWith("dose", StringComparison.Ordinal));
        Assert.Equal([new TimeOnly(8, 0), new TimeOnly(20, 0)], analysis.Record.All("gave").Single().Lines.Select(dose => dose.Time!.Value));
    }

    [Fact]
    public void A_plan_that_is_kept_as_written_makes_no_dose_late_or_missing()
    {
        NoteAnalysis analysis = MarkedFindings.Read($"{Dog}2026-10-01 visit\n  med prednisone taper as on the sheet\n2026-11-01 log\n  08:00 gave prednisone 5mg\n  22:00 gave prednisone 5mg\n2026-11-02 log\n  missed prednisone\n2026-11-03 log\n  gave prednisone 5mg\n");
        Assert.DoesNotContain(analysis.Findings, found => found.Rule.StartsWith("dose", StringComparison.Ordinal));
        Assert.True(Assert.Single(MedicineOrder.All(analysis.Record)).IsAsWritten);
    }

    [Fact]
    public void A_range_of_hours_is_too_close_by_its_shorter_and_too_late_by_its_longer_end()
    {
        string plan = $"{Dog}2026-10-01 visit\n  med tramadol 50mg every 8-12h\n2026-11-01 log\n";
        Assert.DoesNotContain(MarkedFindings.Read(plan + "  08:00 gave tramadol 50mg\n  20:00 gave tramadol 50mg\n").Findings, found => found.Rule is "dose-late" or "dose-doubled");
        Assert.Contains(MarkedFindings.Read(plan + "  08:00 gave tramadol 50mg\n2026-11-02 log\n  04:30 gave tramadol 50mg\n").Findings, found => found.Rule == "dose-late");
        Assert.Contains(MarkedFindings.Read(plan + "  08:00 gave tramadol 50mg\n  10:00 gave tramadol 50mg\n").Findings, found => found.Rule == "dose-doubled");
    }

    [Fact]
    public void An_act_falls_due_again_until_it_is_done_again()
    {
        string act = $"{Dog}2025-11-01 visit\n  vaccine rabies for 1y\n  flea-tick for 12w\n";
        Assert.Equal(["vaccine rabies 2026-11-01", "flea-tick 2026-01-24"], Tasks(act).OrderDescending(StringComparer.Ordinal));
        Assert.Contains(MarkedFindings.Read(act).Findings, found => found is { Rule: "task-overdue", Level: FindingLevel.Info });
        Assert.Equal(["flea-tick 2026-01-24", "vaccine rabies 2029-11-02"], Tasks(act + "2026-11-02 visit\n  vaccine rabies for 3y\n"));
        Assert.Equal(["vaccine rabies 2029-04-15"], Tasks($"{Dog}vaccine rabies for 3y 2026-04-15\n"));
        Assert.Equal(["vaccine rabies 2029-11-10"], Tasks($"{Dog}2026-10-01 log\n  due rabies booster 2026-11-09\n2026-11-10 visit\n  vaccine rabies for 3y\n"));
    }

    private static IEnumerable<string> Tasks(string text) =>
        DueList.Of(MarkedFindings.Read(text).Record).Where(due => due.Kind == HealthNotes.Record.Due.DueKind.Task).Select(due => $"{due.What} {due.On:yyyy-MM-dd}");
}
