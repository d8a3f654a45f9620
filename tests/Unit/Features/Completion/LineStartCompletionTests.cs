namespace HealthNotes.Tests.Features.Completion;

/// <summary>The words a line of an entry may start with.</summary>
public class LineStartCompletionTests
{
    private const string Pet = "pet Marlow\nspecies dog\n";

    [Fact]
    public void A_check_goes_on_with_what_it_lacks_and_ends_with_what_it_has()
    {
        string[] labels = Offered.Labels(Pet + "2026-10-04 check\n  alert bright\n  hr 72\n  skip coat he ran off\n  |\n");
        Assert.Equal(["stance", "gait", "skin"], labels[..3]);
        Assert.Equal(["alert", "coat", "hr"], labels[^3..]);
        Assert.Equal("skipped in this entry", Offered.Item(Pet + "2026-10-04 check\n  skip coat\n  |", "coat").Detail);
    }

    [Fact]
    public void After_else_ok_the_parts_come_last_and_the_measurements_first()
    {
        string[] labels = Offered.Labels(Pet + "2026-10-04 check\n  else ok\n  |");
        Assert.Equal(["bcs", "mcs", "crt", "hr"], labels[..4]);
        Assert.Equal("chest", labels[^1]);
    }

    [Fact]
    public void A_part_with_two_sides_is_not_done_with_one()
    {
        string[] labels = Offered.Labels(Pet + "2026-10-04 check\n  ear L clean\n  eye both clear\n  |");
        Assert.Contains("ear R", labels);
        Assert.DoesNotContain("eye R", labels);
        Assert.DoesNotContain("ear L", labels);
    }

    [Fact]
    public void A_log_starts_with_care_and_its_medicines()
    {
        string[] labels = Offered.Labels(Pet + "med benazepril 5mg every 24h\n2026-10-04 log\n  |");
        Assert.Equal(["gave benazepril 5mg", "gave", "missed", "stop", "ate"], labels[..5]);
        Assert.True(Array.IndexOf(labels, "rr") < Array.IndexOf(labels, "gums"));
    }

    [Fact]
    public void Behind_a_time_a_line_starts_too()
    {
        string[] labels = Offered.Labels(Pet + "2026-10-04 log\n  07:30 |");
        Assert.Contains("ate", labels);
        Assert.DoesNotContain(labels, label => label.StartsWith("2026", StringComparison.Ordinal));
        Assert.Equal("stool", Offered.Labels(Pet + "2026-10-04 log\n  07:30 poo|")[0]);
    }

    [Theory]
    [InlineData("check", "usual", false)]
    [InlineData("visit", "usual", true)]
    [InlineData("check", "med", true)]
    [InlineData("check", "species", false)]
    public void Facts_are_offered_where_they_may_stand(string kind, string word, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"{Pet}2026-10-04 {kind}\n  |").Contains(word));

    [Theory]
    [InlineData("2026-10-04 check\n  recheck ear L in 2w\n2026-10-18 check\n  |", true)]
    [InlineData("2026-10-04 check\n  recheck ear L in 2w\n2026-10-17 check\n  |", false)]
    [InlineData("2026-10-04 check\n  recheck ear L in 2w\n2026-10-18 check\n  ear L clean\n  |", false)]
    [InlineData("2026-10-04 check\n  recheck ear L in 2w\n2026-10-18 check\n  ear R clean\n  |", true)]
    [InlineData("2026-10-04 check\n  recheck ear L in 2w\n2026-10-18 check\n  ear both clean\n2026-10-20 log\n  |", false)]
    [InlineData("2026-10-04 check\n  ear L brown\n  recheck ear L in 2w\n2026-10-20 log\n  |", true)]
    [InlineData("2024-10-04 check\n  recheck ear L in 2w\n2026-10-20 log\n  |", false)]
    public void What_is_to_be_looked_at_again_is_offered_when_it_is_due(string marked, bool offered)
    {
        Assert.Equal(offered, Offered.Labels(Pet + marked).Contains("ear L (recheck)"));
        if (offered)
        {
            Assert.Equal("ear L", Offered.Item(Pet + marked, "ear L (recheck)").Edit.NewText);
        }
    }

    [Theory]
    [InlineData("SRR|", "SRR: rr asleep", "rr asleep")]
    [InlineData("mm|", "MM: gums", "gums")]
    [InlineData("pul|", "hr", "hr")]
    [InlineData("els|", "else ok", "else ok")]
    [InlineData("limpi|", "limping", "limping")]
    [InlineData("vac|", "vaccine", "vaccine")]
    [InlineData("lab|", "lab", "lab")]
    public void Abbreviations_and_other_names_lead_to_the_plain_word(string typed, string label, string written)
    {
        string marked = $"{Pet}2026-10-04 check\n  {typed}";
        Assert.Equal($"{Pet}2026-10-04 check\n  {written}", Offered.Taking(marked, label.StartsWith("else", StringComparison.Ordinal) ? "else ok" : label));
    }

    [Fact]
    public void What_was_seen_comes_below_the_words_of_lines()
    {
        Assert.Equal("walk", Offered.Labels(Pet + "2026-10-04 check\n  wal|")[0]);
        Assert.DoesNotContain("limping", Offered.Labels(Pet + "2026-10-04 check\n  |"));
        Assert.Equal("gait lame", Offered.Item(Pet + "2026-10-04 check\n  limp|", "limping").Detail);
    }
}
