namespace HealthNotes.Cli.Tests;

/// <summary>Two versions of a note, joined by the command and by git.</summary>
public class MergeTests
{
    private const string Before = "pet Marlow\nspecies dog\n\n2026-10-01 check\n  hr 18/15s\n  gums pink\n";

    [Fact]
    public void Copies_that_file_sync_left_are_joined()
    {
        using var folder = new Workspace();
        string note = folder.Note(Before + "  weight 20kg\n", "marlow.hnote");
        folder.Note(Before + "  crt 1.5s\n", "marlow (conflicted copy 2026-10-02).hnote");
        folder.Note(Before + "\n2026-10-02 log\n  ate all\n", "marlow.sync-conflict-20261002.hnote");
        folder.Note(Before + "  coat glossy\n", "marlowe.hnote");
        Outcome outcome = Hnote.Run("merge", note);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("delete the copies", outcome.Output, StringComparison.Ordinal);
        string text = File.ReadAllText(note);
        Assert.All(new[] { "  weight 20kg\n", "  crt 1.5s\n", "2026-10-02 log\n  ate all\n" }, line => Assert.Contains(line, text, StringComparison.Ordinal));
        Assert.DoesNotContain("coat", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_both_changed_ends_with_1()
    {
        using var folder = new Workspace();
        string note = folder.Note(Before.Replace("18/", "19/", StringComparison.Ordinal), "a.hnote");
        Outcome outcome = Hnote.Run("merge", note, folder.Note(Before.Replace("18/", "20/", StringComparison.Ordinal), "b.hnote"), "--base", folder.Note(Before, "c.hnote"));
        Assert.Equal(1, outcome.Code);
        Assert.Contains("hr 18/15s", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("  hr 19/15s\n  hr 20/15s\n", File.ReadAllText(note), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_another_version_the_note_is_as_it_was()
    {
        using var folder = new Workspace();
        string note = folder.Note(Before, "a.hnote");
        Outcome outcome = Hnote.Run("merge", note);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("name the other version", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal(Before, File.ReadAllText(note));
    }

    [Fact]
    public void Marks_of_a_conflict_are_an_error_and_are_taken_out()
    {
        using var folder = new Workspace();
        string note = folder.Note(Before + "<<<<<<< HEAD\n  weight 20kg\n=======\n  crt 1.5s\n>>>>>>> other\n", "a.hnote");
        Assert.Contains("conflict", Hnote.Run("check", note).Output, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("merge", note).Code);
        Assert.Equal(Before + "  weight 20kg\n  crt 1.5s\n", File.ReadAllText(note));
    }

    /// <summary>Real git, many notes at once: every line that either side wrote is in the merge.</summary>
    [SkippableFact]
    public void Git_joins_notes_and_no_line_is_lost()
    {
        const int Notes = 40;
        Skip.IfNot(File.Exists(Hnote.Absolute("git")), "git is missing: apt-get install git");
        using var folder = new Workspace();
        var random = new Random(20261001);
        string[] words = ["weight 20kg", "gums pink", "hr 18/15s", "crt 1.5s", "coat glossy", "ear L clean", "ate all", "> in the garden"];
        string Git(params string[] arguments)
        {
            Outcome outcome = Hnote.RunWith(["git", "-C", folder.Folder, "-c", "user.name=a", "-c", "user.email=a@example.org", "-c", "core.autocrlf=false", .. arguments], null);
            Assert.True(outcome.Code == 0, $"git {string.Join(' ', arguments)}: {outcome.Output}{outcome.Errors}");
            return outcome.Output;
        }

        // lines and days are put in and never changed
        string Grown(string text, string who)
        {
            List<string> lines = [.. text.Split('\n')];
            for (int number = random.Next(1, 5); number > 0; number--)
            {
                string word = $"  {words[random.Next(words.Length)]}  # {who}{random.Next(1000)}";
                int at = random.Next(4, lines.Count);
                lines.InsertRange(at, random.Next(4) == 0 ? [$"2026-10-{random.Next(10, 30)} log", word] : [word]);
            }

            return string.Join('\n', lines);
        }

        Git("init", "-q", "-b", "home");
        Git("config", "merge.hnote.driver", string.Join(' ', Hnote.Command.Select(part => $"'{part}'")) + " merge %A %B --base %O");
        folder.Note("*.hnote merge=hnote\n", ".gitattributes");
        Dictionary<string, (string Ours, string Theirs)> versions = [];
        for (int i = 0; i < Notes; i++)
        {
            folder.Note(Before, $"{i}.hnote");
        }

        Git("add", ".");
        Git("commit", "-q", "-m", "first");
        Git("branch", "clinic");
        for (int i = 0; i < Notes; i++)
        {
            versions[$"{i}.hnote"] = (Grown(Before, "o"), Grown(Before, "t"));
            folder.Note(versions[$"{i}.hnote"].Ours, $"{i}.hnote");
        }

        Git("commit", "-q", "-a", "-m", "ours");
        Git("checkout", "-q", "clinic");
        foreach ((string name, (_, string theirs)) in versions)
        {
            folder.Note(theirs, name);
        }

        Git("commit", "-q", "-a", "-m", "theirs");
        Git("checkout", "-q", "home");
        // a day put in between may part a line from its day on both sides: people are told, and every line is there
        Outcome merged = Hnote.RunWith(["git", "-C", folder.Folder, "-c", "user.name=a", "-c", "user.email=a@example.org", "merge", "-q", "clinic", "-m", "both"], null);
        Assert.InRange(merged.Code, 0, 1);
        foreach ((string name, (string ours, string theirs)) in versions)
        {
            string[] joined = File.ReadAllLines(Path.Combine(folder.Folder, name));
            Assert.Empty(ours.Split('\n').Concat(theirs.Split('\n')).Where(line => line.Length > 0).Except(joined));
            Assert.DoesNotContain(joined, line => line.StartsWith("<<<<<<<", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_new_note_under_version_control_brings_the_attributes()
    {
        using var folder = new Workspace();
        Directory.CreateDirectory(Path.Combine(folder.Folder, ".git"));
        Hnote.Run("new", Path.Combine(folder.Folder, "a.hnote"), "--name", "Marlow", "--species", "dog");
        string attributes = Path.Combine(folder.Folder, ".gitattributes");
        Assert.Equal("*.hnote merge=hnote\n", File.ReadAllText(attributes));
        File.WriteAllText(attributes, "mine");
        Hnote.Run("new", Path.Combine(folder.Folder, "b.hnote"), "--name", "Marlow", "--species", "dog");
        Assert.Equal("mine", File.ReadAllText(attributes));
    }
}
