using System.Text;
using HealthNotes.Trials;

namespace HealthNotes.Exchange.Tests;

/// <summary>The questions in <c>samples/questions</c> run as they are, on the samples and on many drawn pets.</summary>
public class QuestionTests
{
    private static readonly string Questions = Path.Combine(Hnote.Top, "samples", "questions");

    [Fact]
    public void Each_question_has_an_answer_that_the_samples_give()
    {
        using var work = new Workspace();
        work.Note(
            """
            pet Rowan
            species dog
            born 2019-05
            call-if rr asleep >30 per vet 2026-01-20

            2026-02-20 check
              lump L-flank 10mm
            2026-11-20 check
              lump L-flank 30mm
              rr 36 asleep
              gums pale
            """,
            "more/rowan.hnote");
        Assert.Equal(0, Hnote.Run("export", Path.Combine(Hnote.Top, "samples"), work.PathOf("more"), "--format", "parquet", "--out", work.PathOf("shelf"), "--today", Hnote.Today).Code);
        Dictionary<string, List<object?[]>> answers = Answers(work);
        Assert.Equal(10, answers.Count);
        Assert.Contains(answers["lost-weight"], row => IsOf(row, "tansy") && (double)row[^1]! > 5);
        Assert.Equal(36.0, Assert.Single(answers["above-the-clinics-limit"], row => IsOf(row, "rowan"))[6]);
        Assert.Equal(30.0, Assert.Single(answers["lumps-doubled"], row => IsOf(row, "rowan"))[^1]);
        Assert.Contains(answers["doses-not-logged"], row => IsOf(row, "juniper-after-surgery"));
        Assert.Contains(answers["checks-overdue"], row => IsOf(row, "hazel-puppy"));
        Assert.Contains(answers["open-reasons-to-phone"], row => IsOf(row, "tansy"));
        Assert.Contains(answers["quiet-notes"], row => IsOf(row, "full-of-mistakes"));
        Assert.Contains(answers["alarms-of-each-rule"], row => (string)row[0]! == "sign");
        Assert.Contains(answers["signs-of-the-month"], row => (string)row[2]! == "pale");
        Assert.NotEmpty(answers["breathing-asleep"]);
    }

    /// <summary>Truth is known of drawn pets: only one that loses or gains weight, or whose lump grows, may be among the answers.</summary>
    [Fact]
    public void Many_drawn_pets_are_asked_the_same()
    {
        using var work = new Workspace();
        int pets = int.TryParse(Environment.GetEnvironmentVariable("HNOTE_PETS"), out int asked) ? asked : 1_000;
        for (int pet = 0; pet < pets; pet++)
        {
            Series series = AllSeries.Table[pet % AllSeries.Table.Count];
            TrialNote note = series.Make(new Draw(pet));
            var text = new StringBuilder($"pet P{pet}\n").Append(note.Opening).AppendJoin("", note.Entries.Select(entry => entry.Text));
            work.Note(text.ToString(), $"notes/{pet % 100:00}/{(note.Onset is null ? "well" : "changing")}-{pet}.hnote");
        }

        Cli.Tests.Outcome outcome = Hnote.Run("export", work.PathOf("notes"), "--format", "parquet", "--out", work.PathOf("shelf"), "--today", Hnote.Today);
        Assert.True(outcome.Code == 0, outcome.Errors);
        Dictionary<string, List<object?[]>> answers = Answers(work);
        Assert.Contains($"{pets:#,0} notes", outcome.Output, StringComparison.Ordinal);
        Assert.NotEmpty(answers["lumps-doubled"]);
        Assert.All(answers["lumps-doubled"], row => Assert.Contains("changing", (string)row[0]!, StringComparison.Ordinal));
    }

    private static bool IsOf(object?[] row, string note) => ((string)row[0]!).EndsWith(note + ".hnote", StringComparison.Ordinal);

    private static Dictionary<string, List<object?[]>> Answers(Workspace work)
    {
        using var duck = new Duck(work.Folder);
        return Directory.EnumerateFiles(Questions, "*.sql").ToDictionary(file => Path.GetFileNameWithoutExtension(file), file => duck.Rows(File.ReadAllText(file)));
    }
}
