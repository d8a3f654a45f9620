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
        Assert.Equal(0, Hnote.Run("export", Path.Combine(Hnote.Top, "samples"), "--format", "parquet", "--out", work.PathOf("shelf"), "--today", Hnote.Today).Code);
        var answers = Answers(work);
        Assert.Equal(10, answers.Count);
        Assert.Contains(answers["lost-weight"], row => (string)row[0]! == "tansy.hnote" && (double)row[^1]! > 5);
        Assert.Contains(answers["above-the-clinics-limit"], row => (string)row[0]! == "marlow.hnote" && (string)row[3]! == "rr");
        Assert.Contains(answers["doses-not-logged"], row => (string)row[0]! == "juniper-after-surgery.hnote");
        Assert.Contains(answers["open-reasons-to-phone"], row => (string)row[0]! == "tansy.hnote");
        Assert.Contains(answers["alarms-of-each-rule"], row => (string)row[0]! == "sign");
        Assert.Contains(answers["quiet-notes"], row => (string)row[0]! == "full-of-mistakes.hnote");
        Assert.All(answers.Keys.Except(["lumps-doubled", "signs-of-the-month"]), question => Assert.NotEmpty(answers[question]));
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

    private static Dictionary<string, List<object?[]>> Answers(Workspace work)
    {
        using var duck = new Duck(work.Folder);
        return Directory.EnumerateFiles(Questions, "*.sql").ToDictionary(file => Path.GetFileNameWithoutExtension(file), file => duck.Rows(File.ReadAllText(file)));
    }
}
