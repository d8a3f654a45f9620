using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Due;
using HealthNotes.Rendering;

namespace HealthNotes.Tests.Analysis.Clinic;

/// <summary>What a clinic sets for several pets in a file of its own.</summary>
public class ClinicRulesTests
{
    private const string Pet = "pet X\nspecies cat\nborn 2020-01-01\n";
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData("call-if rr asleep >24 per Dr Vet 2026-01-20", Pet + "2026-11-20 check\n  rr 26 asleep\n", "call")]
    [InlineData("species dog\ncall-if rr asleep >24 per Dr Vet 2026-01-20", Pet + "2026-11-20 check\n  rr 26 asleep\n", "")]
    [InlineData("species cat\ncall-if rr asleep >24 per Dr Vet 2026-01-20", Pet + "2026-11-20 check\n  rr 26 asleep\n", "call")]
    [InlineData("call-if rr asleep >24 per Dr Vet 2026-01-20", Pet + "call-if rr asleep >28 per vet 2026-02-01\n2026-11-20 check\n  rr 26 asleep\n", "")]
    [InlineData("call-if rr asleep >24", Pet + "2026-11-20 check\n  rr 26 asleep\n", "")]
    public void A_limit_holds_where_the_note_has_none_and_only_for_its_animal(string rules, string note, string level) =>
        Assert.Equal(level, string.Join(',', Analyse(note, rules).Findings.Where(finding => finding.Rule == "call-if").Select(finding => finding.Level.ToString().ToLowerInvariant())));

    [Fact]
    public void A_finding_names_the_file_and_who_set_the_limit()
    {
        NoteFinding finding = Analyse(Pet + "2026-11-20 check\n  rr 26 asleep\n", "call-if rr asleep >24 per Dr Vet 2026-01-20").Findings.Single(finding => finding.Rule == "call-if");
        Assert.Equal("our.hnote-rules, per Dr Vet", finding.Source);
        Assert.Contains("above the clinic's limit of 24 a minute (set 20 Jan)", finding.Message, StringComparison.Ordinal);
        Assert.Equal([4], finding.Evidence.ToArray());
    }

    [Fact]
    public void The_nearest_rules_come_first()
    {
        Note note = Note.Read(Pet + "2026-11-20 check\n  rr 26 asleep\n") with
        {
            Clinic = [ClinicRules.Read("near.hnote-rules", "call-if rr asleep >28 per a 2026-01-20"), ClinicRules.Read("far.hnote-rules", "call-if rr asleep >24 per b 2026-01-20\ncall-if hr >100 per b 2026-01-20")],
        };
        Assert.Equal([("near.hnote-rules", 28m), ("far.hnote-rules", 100m)], NoteAnalysis.Of(note, Today).Record.Facts.CallIfs.Select(drawn => (drawn.Fact.From!, drawn.Limit)).OrderBy(drawn => drawn.Limit));
    }

    /// <summary>A range of the clinic may be wide; what is urgent by our own table stays so.</summary>
    [Theory]
    [InlineData("  rr 90 asleep")]
    [InlineData("  temp 41.5C")]
    [InlineData("  gums white")]
    public void Nothing_in_it_quiets_what_is_urgent(string line)
    {
        string[] before = [.. Urgent(Analyse(Pet + $"2026-11-20 check\n{line}\n", ""))];
        Assert.NotEmpty(before);
        Assert.Equal(before, Urgent(Analyse(Pet + $"2026-11-20 check\n{line}\n", "usual rr 5-250 per a 2026-01-01\nusual temp 20-44C per a 2026-01-01\ncall-if rr >250 per a 2026-01-01")));
    }

    [Fact]
    public void A_range_is_said_to_be_the_clinics()
    {
        NoteFinding finding = Analyse(Pet + "2026-11-20 check\n  rr 26 asleep\n", "usual rr 12-20 asleep per Dr Vet 2026-01-20").Findings.Single(finding => finding.Rule == "usual-range");
        Assert.Contains("above the clinic's range 12 to 20 a minute (our.hnote-rules)", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Checks_fall_due_as_the_clinic_says()
    {
        DueItem due = DueList.NextCheck(Analyse(Pet + "2026-11-20 check\n  gums pink\n", "home-check every 7d").Record)!;
        Assert.Equal((new DateOnly(2026, 11, 27), "our.hnote-rules", null), (due.On!.Value, due.Source, due.FactLine));
    }

    [Theory]
    [InlineData("pet X", 0, "`pet` is about one pet")]
    [InlineData("clinic A\ncall-if rr asleep >24", 1, "Who set it, and when?")]
    [InlineData("clinic A\n2026-10-04 check\n  gums pink", 1, "hold no entries")]
    [InlineData("clinic A\ncall-if rr asleeep >24 per a 2026-01-01", 1, "asleeep")]
    public void What_cannot_stand_in_it_is_reported_and_holds_for_no_note(string text, int line, string message)
    {
        ClinicRules rules = ClinicRules.Read("our.hnote-rules", text);
        PlacedProblem problem = Assert.Single(rules.Lines.Problems);
        Assert.Equal(line, problem.Line);
        Assert.Contains(message, problem.Problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(rules.Lines.Opening.Facts, fact => fact.Line == line);
        NoteFinding finding = Assert.Single(NoteAnalysis.Of(rules.Lines, Today).Findings);
        Assert.Equal(FindingLevel.Error, finding.Level);
    }

    [Fact]
    public void An_edit_keeps_them()
    {
        Note note = Note.Read(Pet + "2026-11-20 check\n  rr 22 asleep\n") with { Clinic = [ClinicRules.Read("our.hnote-rules", "call-if rr asleep >24 per Dr Vet 2026-01-20")] };
        Document edited = Document.Open("a", 0, note, Today).Edit(new DocumentEdit(new PlaceRange(new Place(4, 5), new Place(4, 7)), "26"), 1);
        Assert.Contains(edited.Analysis.Findings, finding => finding.Rule == "call-if");
        Assert.DoesNotContain(edited.Under([]).Analysis.Findings, finding => finding.Rule == "call-if");
    }

    [Fact]
    public void An_edit_of_the_rules_is_checked_as_rules()
    {
        Document rules = Document.Open("a.hnote-rules", 0, ClinicRules.Read("a", "clinic A\n").Lines, Today).Edit(new DocumentEdit(new PlaceRange(new Place(1, 0), new Place(1, 0)), "pet X\n"), 1);
        Assert.Contains("about one pet", Assert.Single(rules.Analysis.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_says_whose_limit_is_shown_and_whom_to_phone()
    {
        string page = VisitPage.Markdown(Analyse(Pet + "2026-11-20 check\n  rr 26 asleep\n", "clinic Two Rivers (invented)\nphone 01632 960142\ncall-if rr asleep >24 per Dr Vet 2026-01-20"));
        Assert.Contains("(our.hnote-rules)", page, StringComparison.Ordinal);
        Assert.Contains("Two Rivers", page, StringComparison.Ordinal);
        Assert.Contains("01632 960142", page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Urgent(NoteAnalysis analysis) => analysis.Findings.Where(finding => finding.Level == FindingLevel.Urgent).Select(finding => finding.Rule);

    private static NoteAnalysis Analyse(string note, string rules) => NoteAnalysis.Of(Note.Read(note) with { Clinic = [ClinicRules.Read("our.hnote-rules", rules)] }, Today);
}
