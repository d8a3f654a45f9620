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
