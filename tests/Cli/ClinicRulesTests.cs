namespace HealthNotes.Cli.Tests;

/// <summary>Where a clinic's rules are looked for, and how they are checked.</summary>
public class ClinicRulesTests
{
    private const string Note = "pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  rr 26 asleep\n";

    [Fact]
    public void Rules_of_the_folder_and_those_above_it_hold_and_the_nearest_comes_first()
    {
        using var work = new Workspace();
        string note = work.Note(Note, "clinic/dogs/marlow.hnote");
        Assert.Equal(0, Hnote.Run("check", note, "--today", "2026-10-05").Code);
        work.Note("call-if rr asleep >24 per vet 2026-01-20\n", "clinic/.hnote-rules");
        Outcome call = Hnote.Run("check", work.Folder, "--today", "2026-10-05");
        Assert.Equal(1, call.Code);
        Assert.Contains("source: .hnote-rules, per vet", call.Output, StringComparison.Ordinal);
        work.Note("call-if rr asleep >28 per vet 2026-01-20\n", "clinic/dogs/dogs.hnote-rules");
        Assert.Equal(0, Hnote.Run("check", note, "--today", "2026-10-05").Code);
    }

    [Fact]
    public void Rules_beside_or_below_the_note_s_folder_do_not_hold()
    {
        using var work = new Workspace();
        string note = work.Note(Note, "a/marlow.hnote");
        work.Note("call-if rr asleep >24 per vet 2026-01-20\n", "b/x.hnote-rules");
        work.Note("call-if rr asleep >24 per vet 2026-01-20\n", "a/c/x.hnote-rules");
        Assert.Equal(0, Hnote.Run("check", note, "--today", "2026-10-05").Code);
    }

    [Fact]
    public void Rules_are_checked_like_a_note_and_a_wrong_line_is_reported_with_the_notes()
    {
        using var work = new Workspace();
        string note = work.Note(Note, "marlow.hnote");
        string rules = work.Note("clinic Two Rivers (invented)\ncall-if rr asleeep >24 per vet 2026-01-20\n", "our.hnote-rules");
        Outcome check = Hnote.Run("check", rules, "--format", "github");
        Assert.Equal(1, check.Code);
        Assert.Contains("line=2,col=12,", check.Output, StringComparison.Ordinal);
        Outcome over = Hnote.Run("check", note, "--today", "2026-10-05");
        Assert.Equal(0, over.Code);
        Assert.Contains("our.hnote-rules, line 2: ", over.Errors, StringComparison.Ordinal);
        Assert.Contains("holds for no note", over.Errors, StringComparison.Ordinal);
    }

    /// <summary>A pipeline that checks a folder must not pass while a limit of the clinic holds for no note.</summary>
    [Theory]
    [InlineData("our.hnote-rules")]
    [InlineData(".hnote-rules")]
    public void The_check_of_a_folder_checks_the_rules_in_it(string name)
    {
        using var work = new Workspace();
        work.Note(Note, "clinic/marlow.hnote");
        work.Note("call-if rr asleeep >24 per vet 2026-01-20\n", "clinic/" + name);
        Outcome check = Hnote.Run("check", work.PathOf("clinic"), "--format", "github", "--today", "2026-10-05");
        Assert.Equal((1, ""), (check.Code, check.Errors));
        Assert.Contains($"clinic/{name},line=1,col=12,", check.Output, StringComparison.Ordinal);
        work.Note("CALL-IF rr asleep >34 per vet 2026-01-20\n", "clinic/" + name);
        Outcome right = Hnote.Run("check", work.PathOf("clinic"), "--today", "2026-10-05");
        Assert.Equal((0, ""), (right.Code, right.Errors));
        Assert.Single(right.Output.Split("No recorded value is out of range").Skip(1));
        Assert.Equal(1, Hnote.Run("format", work.PathOf("clinic"), "--check").Code);
    }

    [Theory]
    [InlineData("page", "--out", "-")]
    [InlineData("sheet", "--out", "-")]
    [InlineData("export", "--format", "fhir", "--out", "-")]
    public void What_is_made_of_a_note_says_that_a_line_of_the_rules_does_not_hold(string command, params string[] options)
    {
        using var work = new Workspace();
        string note = work.Note(Note, "marlow.hnote");
        work.Note("clinic Two Rivers (invented)\ncall-if rr asleeep >24 per vet 2026-01-20\n", "our.hnote-rules");
        Outcome made = Hnote.Run([command, note, "--today", "2026-10-05", .. options]);
        Assert.Equal(0, made.Code);
        Assert.Contains("our.hnote-rules, line 2: ", made.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Rules_that_can_t_be_read_are_named()
    {
        using var work = new Workspace();
        string note = work.Note("include large\n" + Note, "marlow.hnote");
        string line = "call-if rr asleep >24 per vet 2026-01-20\n";
        work.Note(string.Concat(Enumerable.Repeat(line, 7_000)), "large.hnote-rules");
        work.Note("include nothing\n", "other.hnote-rules");
        File.CreateSymbolicLink(work.PathOf("linked.hnote-rules"), work.PathOf("other.hnote-rules"));
        Outcome check = Hnote.Run("check", note, "--today", "2026-10-05");
        Assert.Contains("The rules file `large` can't be read: it is larger than 256 KB.", check.Output, StringComparison.Ordinal);
        Assert.Contains("large.hnote-rules: it is larger than 256 KB. No line of it holds", check.Errors, StringComparison.Ordinal);
        Assert.Contains("linked.hnote-rules: it is a link", check.Errors, StringComparison.Ordinal);
        Assert.Contains("other.hnote-rules, line 1: No rules file `nothing`", check.Errors, StringComparison.Ordinal);
        Assert.All(Enumerable.Range(0, 20), number => work.Note(line, $"more/{number:00}.hnote-rules"));
        Outcome many = Hnote.Run("check", work.Note(Note, "more/marlow.hnote"), "--today", "2026-10-05");
        Assert.Contains("16.hnote-rules: there are more than 16 in one place", many.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_for_sharing_names_no_clinic_of_the_rules()
    {
        using var work = new Workspace();
        string note = work.Note(Note, "marlow.hnote");
        work.Note("clinic Two Rivers (invented)\nphone 01632 960142\ncall-if rr asleep >24 per Zorinda 2026-01-20\n", "two-rivers.hnote-rules");
        Assert.Contains("Two Rivers", Hnote.Run("page", note, "--out", "-", "--today", "2026-10-05").Output, StringComparison.Ordinal);
        string shared = Hnote.Run("page", note, "--for", "share", "--out", "-", "--today", "2026-10-05").Output;
        Assert.All(["Two Rivers", "01632", "two-rivers", "Zorinda"], name => Assert.DoesNotContain(name, shared, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Rules_that_a_note_includes_come_first_and_circles_end()
    {
        using var work = new Workspace();
        string note = work.Note("include rules/cardiac\n" + Note, "clinic/dogs/marlow.hnote");
        work.Note("call-if rr asleep >24 per Dr Heart 2026-01-20\ninclude more\n", "clinic/rules/cardiac.hnote-rules");
        work.Note("clinic Two Rivers (invented)\ninclude cardiac\ninclude more\n", "clinic/rules/more.hnote-rules");
        work.Note("call-if rr asleep >20 per vet 2026-01-20\n", "clinic/our.hnote-rules");
        Outcome check = Hnote.Run("check", note, "--today", "2026-10-05");
        Assert.Equal(1, check.Code);
        Assert.Contains("limit of 24 a minute", check.Output, StringComparison.Ordinal);
        Assert.Contains("source: cardiac.hnote-rules, per Dr Heart", check.Output, StringComparison.Ordinal);
        Assert.Contains("Two Rivers", Hnote.Run("page", note, "--out", "-", "--today", "2026-10-05").Output, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("check", Path.Combine(work.Folder, "clinic/rules/more.hnote-rules")).Code);
    }

    [Theory]
    [InlineData("cardiac")]
    [InlineData("../outside")]
    [InlineData("/tmp/outside")]
    [InlineData("linked")]
    [InlineData("down/../../outside")]
    public void An_include_that_leads_nowhere_or_outside_is_reported_at_its_name(string name)
    {
        using var work = new Workspace();
        string note = work.Note($"pet X\ninclude {name}\n", "in/marlow.hnote");
        string outside = work.Note("call-if rr asleep >24 per vet 2026-01-20\n", "outside.hnote-rules.txt");
        File.Move(outside, Path.Combine(work.Folder, "outside.hnote-rules"));
        File.CreateSymbolicLink(Path.Combine(work.Folder, "in/linked.hnote-rules"), Path.Combine(work.Folder, "outside.hnote-rules"));
        Outcome check = Hnote.Run("check", note, "--format", "github");
        Assert.Equal(1, check.Code);
        Assert.Contains("line=2,col=9,", check.Output, StringComparison.Ordinal);
        Assert.Contains("No rules file", check.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_clinic_s_own_spellings_are_read()
    {
        using var work = new Workspace();
        string note = work.Note("pet X\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gait boiteux\n", "marlow.hnote");
        Assert.Equal(1, Hnote.Run("check", note, "--today", "2026-10-05").Code);
        work.Note("alias boiteux = lame\n", "our.hnote-rules");
        Assert.Contains("gait boiteux", Hnote.Run("check", note, "--today", "2026-10-05", "--level", "watch").Output, StringComparison.Ordinal);
        Assert.Contains("`lame`", Hnote.Run("check", note, "--today", "2026-10-05").Output, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("format", note, "--check").Code);
    }
}
