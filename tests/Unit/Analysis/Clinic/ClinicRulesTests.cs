using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Pages;

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
    [InlineData("phone-now-if rr asleep >24 per Dr Vet 2026-01-20", "rr 26 asleep", "call-if urgent")]
    [InlineData("phone-now-if rr asleep >24 per Dr Vet 2026-01-20\ncall-if rr asleep >20 per Dr Vet 2026-01-20", "rr 26 asleep", "call-if urgent")]
    [InlineData("phone-now-if rr asleep >24 per Dr Vet 2026-01-20\ncall-if rr asleep >20 per Dr Vet 2026-01-20", "rr 22 asleep", "call-if call")]
    [InlineData("med-range carprofen 2-4mg/kg per Dr Vet 2026-01-20", "gave carprofen 20mg\n  weight 4kg", "med-range call")]
    [InlineData("med-range carprofen 2-4mg/kg per Dr Vet 2026-01-20", "gave carprofen 16mg\n  weight 4kg", "")]
    [InlineData("med-range carprofen 2-4mg/kg per Dr Vet 2026-01-20", "gave carprofen 4mg\n  weight 4kg", "med-range watch")]
    [InlineData("med-range carprofen 2-4mg/kg per Dr Vet 2026-01-20", "gave carprofen 20mg", "")]
    [InlineData("med-range carprofen 5-10mg per Dr Vet 2026-01-20", "gave carprofen 20mg", "med-range call")]
    [InlineData("med-range insulin 1-4 unit per Dr Vet 2026-01-20", "gave insulin 5 unit", "med-range call")]
    [InlineData("med-strength carprofen 20mg per Dr Vet 2026-01-20\nmed-strength carprofen 50mg per Dr Vet 2026-01-20", "med carprofen 75mg tablets, 1 tablet every 24h", "med-range watch")]
    [InlineData("med-strength carprofen 20mg per Dr Vet 2026-01-20\nmed-strength carprofen 50mg per Dr Vet 2026-01-20", "med carprofen 50mg tablets, 1 tablet every 24h", "")]
    public void What_a_clinic_sets_is_compared(string rules, string line, string found) =>
        Assert.Equal(found, string.Join(", ", Analyse(Pet + $"2026-11-20 visit\n  {line}\n", rules).Findings.Where(finding => finding.Rule is "call-if" or "med-range").Select(finding => $"{finding.Rule} {finding.Level.ToString().ToLowerInvariant()}")));

    /// <summary>A range of doses holds for a pet as well, and is replaced by the note's own.</summary>
    [Fact]
    public void The_note_s_own_range_of_doses_comes_first() => Assert.DoesNotContain(
        Analyse(Pet + "med-range carprofen 2-6mg/kg per vet 2026-01-20\n2026-11-20 log\n  weight 4kg\n  gave carprofen 20mg\n", "med-range carprofen 2-4mg/kg per Dr Vet 2026-01-20").Findings, finding => finding.Rule == "med-range");

    [Fact]
    public void What_is_urgent_is_lowered_only_where_the_clinic_overrides_it_and_finding_and_page_say_so()
    {
        const string Rules = "override urgent temp-range per Dr Vet 2026-01-20 because measured in the ear here";
        NoteAnalysis analysis = Analyse(Pet + "2026-11-20 check\n  temp 41.5C\n  rr 90 asleep\n", Rules);
        NoteFinding lowered = analysis.Findings.Single(finding => finding.Rule == "temp-range");
        Assert.Equal(FindingLevel.Call, lowered.Level);
        Assert.Contains("make it a reason to phone: measured in the ear here (our.hnote-rules, per Dr Vet 2026-01-20).", lowered.Message, StringComparison.Ordinal);
        Assert.NotEmpty(Urgent(analysis));
        string page = VisitPage.Markdown(analysis);
        Assert.Contains("measured in the ear here (our.hnote-rules, per Dr Vet 2026-01-20).", page, StringComparison.Ordinal);
        Assert.DoesNotContain("2026-01-20)..", page, StringComparison.Ordinal);
    }

    /// <summary>The range that is shown beside a value past a line of ours is the clinic's, where it set one.</summary>
    [Theory]
    [InlineData("", "Shown as normal: ")]
    [InlineData("usual temp 37.8-39.2C per Dr Vet 2026-01-20", "The clinic's usual: 37.8 to 39.2 °C (our.hnote-rules).")]
    public void The_range_beside_a_value_is_the_clinics(string rules, string shown) => Assert.Contains(
        shown, Analyse(Pet + "2026-11-20 check\n  temp 41.5C\n", rules).Findings.Single(finding => finding.Rule == "temp-range").Message, StringComparison.Ordinal);

    /// <summary>What is urgent stands beside the limit that makes it so; a later reading between both goes by the lower one again.</summary>
    [Theory]
    [InlineData("55", "above the clinic's limit of 50")]
    [InlineData("35", "above the clinic's limit of 30")]
    public void The_page_names_the_limit_that_was_passed(string rate, string limit) => Assert.Contains(
        limit, VisitPage.Markdown(Analyse(Pet + $"2026-11-20 check\n  rr 55 asleep\n2026-11-21 check\n  rr {rate} asleep\n", "call-if rr asleep >30 per vet 2026-01-20\nphone-now-if rr asleep >50 per vet 2026-01-20")), StringComparison.Ordinal);

    [Theory]
    [InlineData("alias blorpy = runny", "ear L blorpy", "ear L runny")]
    [InlineData("alias boiteux = lame", "gait boiteux", "gait lame")]
    [InlineData("alias waddle walk = lame", "gait waddle walk", "gait lame")]
    [InlineData("alias schwellung = lump", "schwellung L-flank 12mm", "lump L-flank 12mm")]
    [InlineData("alias achselhoehle = armpit", "lump L-achselhoehle 12mm", "lump L-armpit 12mm")]
    [InlineData("alias schlafend = asleep", "rr 60 schlafend", "rr 60 asleep")]
    [InlineData("species dog\nalias blorpy = sticky", "ear L blorpy", null)]
    public void The_clinic_s_own_spelling_is_read_as_the_known_word(string rules, string written, string? known)
    {
        var clinic = ClinicRules.Read("our.hnote-rules", rules);
        Assert.Empty(clinic.Lines.Problems);
        Note note = Note.Read(Pet + $"2026-11-20 check\n  {written}\n");
        Note under = note.Under([clinic], NoteVocabulary.Default.With(clinic.HoldsFor(Species.Cat) ? clinic.Aliases : []));
        Assert.Equal(known is null, under.Problems.Any());
        if (known is not null)
        {
            Assert.Equal(Levels(Note.Read(Pet + $"2026-11-20 check\n  {known}\n")), Levels(under));
            Assert.Empty(Document.Open("a", 0, under, Today).Edit(new DocumentEdit(new PlaceRange(new Place(5, 0), new Place(5, 0)), $"  {written}\n"), 1).Note.Problems);
        }

        static string Levels(Note note) => string.Join('|', NoteAnalysis.Of(note, Today).Findings.Select(finding => $"{finding.Rule} {finding.Level}"));
    }

    [Fact]
    public void What_several_pets_share_does_not_stand_in_a_note() =>
        Assert.All(Note.Read("pet X\nalias blorpy = sticky\noverride urgent temp-range per a 2026-01-01 because b\n").Problems, problem => Assert.Contains("for several pets", problem.Problem.Message, StringComparison.Ordinal));

    [Theory]
    [InlineData("alias blorpy sticky", 0, "Write the clinic's spelling")]
    [InlineData("alias blorpy = stcky", 0, "Did you mean `sticky`?")]
    [InlineData("alias blorpy = carprofen", 0, "is not a part, a sign")]
    [InlineData("alias runny = sticky", 0, "has a meaning already")]
    [InlineData("alias b9 = sticky", 0, "letters, hyphens and blanks")]
    [InlineData("override urgent temp-range per a 2026-01-01", 0, "Why?")]
    [InlineData("override urgent temp-range because b", 0, "Who set it, and when?")]
    [InlineData("override urgent temp-rnge per a 2026-01-01 because b", 0, "did you mean `temp-range`?")]
    [InlineData("med-range carprofen 2-4 per a 2026-01-01", 0, "2-4")]
    [InlineData("med-range carprofen 2-4mg/kg", 0, "Who set it, and when?")]
    [InlineData("pet X", 0, "`pet` is about one pet")]
    [InlineData("clinic A\ncall-if rr asleep >24", 1, "Who set it, and when?")]
    [InlineData("clinic A\n2026-10-04 check\n  gums pink", 1, "hold no entries")]
    [InlineData("clinic A\ncall-if rr asleeep >24 per a 2026-01-01", 1, "asleeep")]
    public void What_cannot_stand_in_it_is_reported_and_holds_for_no_note(string text, int line, string message)
    {
        ClinicRules rules = ClinicRules.Read("our.hnote-rules", text);
        NoteFinding finding = Assert.Single(NoteAnalysis.Of(rules.Lines, Today).Findings);
        Assert.Equal((line, FindingLevel.Error), (finding.Line, finding.Level));
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(rules.Lines.Opening.Facts, fact => fact.Line == line && finding.Rule != "accept");
    }

    [Fact]
    public void An_edit_keeps_them()
    {
        Note note = Note.Read(Pet + "2026-11-20 check\n  rr 22 asleep\n") with { Clinic = [ClinicRules.Read("our.hnote-rules", "call-if rr asleep >24 per Dr Vet 2026-01-20")] };
        Document edited = Document.Open("a", 0, note, Today).Edit(new DocumentEdit(new PlaceRange(new Place(4, 5), new Place(4, 7)), "26"), 1);
        Assert.Contains(edited.Analysis.Findings, finding => finding.Rule == "call-if");
        Assert.DoesNotContain(edited.Under(edited.Note with { Clinic = [] }).Analysis.Findings, finding => finding.Rule == "call-if");
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
