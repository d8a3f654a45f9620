using System.Collections.Immutable;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Tests.Analysis.Problems;

/// <summary>One problem a thing, in the order in which a clinic needs them.</summary>
public class ProblemTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public void Every_word_that_can_have_a_finding_has_a_row_and_no_row_a_word_that_is_not_known()
    {
        IEnumerable<string> words = NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care).Select(word => word.Word);
        Assert.Empty(words.Except(ProblemTopic.All.Select(row => row.What)));
        Assert.DoesNotContain(ProblemTopic.All, row => row.What != "other" && NoteVocabulary.Default.LineWords.Find(row.What) is null);
        Assert.Equal(ProblemTopic.All.Length, ProblemTopic.All.DistinctBy(row => row.What).Count());
        Assert.All(ProblemTopic.All.GroupBy(row => row.System), system => Assert.Single(system.Select(row => (row.Title, row.Order, row.Apart)).Distinct()));
    }

    [Fact]
    public void The_clinics_words_are_of_systems_that_there_are()
    {
        string[] systems = [.. HealthNotes.Record.Data.ClinicalData.Rows("clinic-words.tsv").Select(row => row["system"])];
        Assert.Empty(systems.Except(ProblemTopic.All.Select(row => row.System)));
        Assert.Equal(systems.Distinct(), systems);
    }

    /// <summary>A sentence that asks to be phoned belongs to what it names, or to what the sentence before it names; the latest visit counts.</summary>
    [Theory]
    [InlineData("Ring if it weeps or opens.", "wound", "Ring if it weeps or opens.")]
    [InlineData("Ring if it weeps or opens.", "breathing", null)]
    [InlineData("Count his breaths asleep. Above 30.5 twice: phone!", "breathing", "Above 30.5 twice: phone!")]
    [InlineData("Count his breaths asleep. Weigh him. Above 30 twice: phone.", "breathing", null)]
    [InlineData("Keep the wound dry.", "wound", null)]
    [InlineData("The wound is fine, calling it healed.", "wound", null)]
    public void A_clinics_ring_if_belongs_to_what_it_names(string said, string system, string? sentence)
    {
        string note = "pet A\nspecies dog\n2026-09-01 visit by the vet\n  weight 20kg\n  > Ring if his eye closes.\n2026-10-01 visit by the vet\n  weight 20kg\n  > " + said + "\n2026-11-01 log\n  ate all\n";
        Assert.Equal(sentence, ClinicWords.Of(NoteAnalysis.Of(Note.Read(note), Today), system)?.Sentence);
        Assert.Equal(new DateOnly(2026, 9, 1), ClinicWords.Of(NoteAnalysis.Of(Note.Read(note), Today), "eyes")?.Day);
    }

    [Fact]
    public void What_belongs_together_is_one_problem()
    {
        ImmutableArray<Problem> problems = Of("2026-11-01 log\n  water 3000ml\n  pee dark 2x\n  vomit bile 1x\n  stool loose 1x\n  ear L odour\n  ear R wax\n  lump L-flank 12mm\n  lump R-flank 15mm\n");
        Assert.Equal(problems.Length, problems.DistinctBy(problem => (problem.Topic.System, problem.Detail)).Count());
        Assert.Single(problems, problem => problem.Topic.System == "eating");
        Assert.Single(problems, problem => problem.Topic.System == "ears");
        Assert.Equal(2, problems.Count(problem => problem.Topic.System == "lump"));
    }

    [Fact]
    public void They_stand_by_level_and_what_has_ended_comes_last()
    {
        ImmutableArray<Problem> problems = Of("2026-11-01 log\n  eye L closed\n  coat matted\n  gait LH lame\n  gums grey\n2026-11-05 check\n  eye both clear\n");
        Assert.True(problems[^1].IsEnded);
        Assert.Equal("eyes", problems[^1].Topic.System);
        FindingLevel[] levels = [.. problems.Where(problem => !problem.IsEnded).Select(problem => problem.Level)];
        Assert.Equal(levels.OrderDescending(), levels);
        Assert.Equal(FindingLevel.Urgent, levels[0]);
    }

    [Theory]
    [InlineData("20,20.1,19.9,18.8,18", "20.1")]
    [InlineData("20,25,19.9,18.8,18", "20")]
    [InlineData("25,20,19.9,18.8,18", "20")]
    public void A_loss_is_told_from_the_highest_reliable_weight(string weights, string from)
    {
        DayValue[] days = [.. weights.Split(',').Select((weight, index) => Day(index, decimal.Parse(weight, null)))];
        Assert.Equal(decimal.Parse(from, null), ValueCourse.Extreme([.. days], highest: true)!.Value.Value);
    }

    [Fact]
    public void Numbers_of_lumps_are_given_when_first_noted_and_stay()
    {
        const string Before = "2026-01-01 check\n  lump L-flank 10mm\n  wound RH-paw 20mm\n2026-03-01 check\n  lump chest 5mm\n  wound RH-paw healed\n";
        (int, string)[] numbers = Numbers(Before);
        Assert.Equal([(1, "L-flank"), (2, "RH-paw"), (3, "chest")], numbers);
        Assert.Equal(numbers, Numbers(Before + "2026-06-01 check\n  lump R-ribs 9mm\n  wound L-ear 4mm\n").Take(3));

        static (int, string)[] Numbers(string entries) => [.. LumpNumbering.Of(PetRecord.Of(Note.Read("pet A\nspecies dog\n" + entries), Today)).Select(life => (life.Number, life.Life.Key.Detail))];
    }

    [Fact]
    public void A_dose_given_twice_is_told_with_its_times_and_a_missed_one_with_its_day()
    {
        DosePart dose = Of("med ax 5mg every 24h from 2026-11-01\n2026-11-02 log\n  07:00 gave ax 5mg\n2026-11-03 log\n  06:50 gave ax 5mg\n  08:10 gave ax 5mg\n2026-11-04 log\n  07:00 missed ax\n2026-11-05 log\n  07:00 gave ax 5mg\n")
            .SelectMany(problem => problem.Parts).OfType<DosePart>().Single();
        Assert.Equal(4, dose.Given);
        Assert.Equal(["06:50", "08:10"], Assert.Single(dose.Doubled).Doses.Select(line => $"{line.Time:HH:mm}"));
        Assert.Equal(new DateOnly(2026, 11, 4), Assert.Single(dose.Missed).Day);
    }

    private static DayValue Day(int index, decimal weight)
    {
        string note = $"pet A\nspecies dog\n2026-01-{index + 1:00} check\n  weight {weight}kg\n";
        return new DayValue(new DateOnly(2026, 1, index + 1), weight, Bound.Exact, PetRecord.Of(Note.Read(note), Today).Readings[0]);
    }

    private static ImmutableArray<Problem> Of(string entries) => [.. ProblemList.Of(NoteAnalysis.Of(Note.Read("pet A\nspecies dog\nborn 2020\nadult-weight 20kg\n" + entries), Today)).Where(problem => problem.IsTold)];
}
