namespace HealthNotes.Cli.Tests;

/// <summary>What <c>check</c> keeps of many notes between runs, and when it must not be used.</summary>
public class CacheTests
{
    private const int Many = 40;
    private const string Rules = "call-if rr asleep >24 per vet 2026-01-20\n";

    [Fact]
    public void What_did_not_change_is_kept_and_prints_the_same()
    {
        using var work = Notes(out string[] notes);
        Outcome plain = Check(work, "--no-cache");
        Assert.False(Directory.Exists(Path.Combine(work.Folder, "cache")));
        Assert.Equal(plain, Check(work));
        string kept = Kept(work);
        Assert.Equal(plain, Check(work));

        // the text that is printed really comes from there
        string marked = notes[0] + " (Pet 0)";
        Rewrite(kept, bytes => Replace(bytes, marked, notes[0] + " (Pat 0)"));
        Assert.Contains(notes[0] + " (Pat 0)", Check(work).Output, StringComparison.Ordinal);

        File.AppendAllText(notes[0], "  gums white\n");
        Outcome changed = Check(work);
        Assert.Contains(marked, changed.Output, StringComparison.Ordinal);
        Assert.Equal(Check(work, "--no-cache"), changed);
        Assert.Equal(1, changed.Code);
    }

    [Theory]
    [InlineData("--today", "2026-12-24")]
    [InlineData("--all")]
    [InlineData("--level", "call")]
    [InlineData("--format", "github")]
    public void Another_day_or_option_is_worked_out_anew(params string[] options)
    {
        using var work = Notes(out _);
        Check(work);
        Assert.Equal(Check(work, ["--no-cache", .. options]), Check(work, options));
    }

    [Fact]
    public void Other_rules_are_heeded()
    {
        using var work = Notes(out _);
        Assert.Equal(0, Check(work).Code);
        work.Note(Rules, "pets/our.hnote-rules");
        Assert.Equal(1, Check(work).Code);
        File.WriteAllText(work.PathOf("pets/our.hnote-rules"), Rules.Replace("24", "40", StringComparison.Ordinal));
        Assert.Equal(0, Check(work).Code);
    }

    /// <summary>A file that is damaged or was put there counts as none, and is replaced.</summary>
    [Theory]
    [InlineData("empty")]
    [InlineData("cut")]
    [InlineData("other letters")]
    [InlineData("a count without end")]
    [InlineData("a link")]
    [InlineData("a folder")]
    [InlineData("controls")]
    public void A_hostile_file_does_no_harm(string what)
    {
        using var work = Notes(out _);
        Outcome plain = Check(work);
        string kept = Kept(work);
        byte[] bytes = File.ReadAllBytes(kept);
        File.Delete(kept);
        switch (what)
        {
            case "empty": File.WriteAllBytes(kept, []); break;
            case "cut": File.WriteAllBytes(kept, bytes[..(bytes.Length / 2)]); break;
            case "other letters": File.WriteAllBytes(kept, [.. bytes.Select((value, index) => index == bytes.Length / 2 ? (byte)(value ^ 1) : value)]); break;
            case "a count without end": Sign(kept, [0xFF, 0xFF, 0xFF, 0x7F, 0xFF, 0xFF, 0xFF, 0xFF, 0x07]); break;
            case "a link": File.CreateSymbolicLink(kept, "/dev/zero"); break;
            case "a folder": Directory.CreateDirectory(kept); break;
            default: Sign(kept, Replace(bytes[32..], "Pet 1)", "\u001b[2J")); break;
        }

        Outcome again = Check(work);
        Assert.DoesNotContain('\u001b', again.Output);
        Assert.Equal(what == "controls", again.Output != plain.Output);
        Assert.Equal((plain.Code, ""), (again.Code, again.Errors));
    }

    [Fact]
    public void Few_notes_keep_nothing_and_a_cache_that_cannot_be_written_is_left_out()
    {
        using var work = Notes(out string[] notes);
        Hnote.RunWith([.. Hnote.Command, "check", notes[0], "--today", Hnote.Today], null, ("XDG_CACHE_HOME", work.PathOf("cache")));
        Assert.False(Directory.Exists(work.PathOf("cache")));
        File.WriteAllText(work.PathOf("cache"), "a file");
        Assert.Equal((0, ""), (Check(work).Code, Check(work).Errors));
    }

    [Fact]
    public void A_page_of_a_folder_is_made_again_where_it_is_not_what_it_would_be()
    {
        using var work = Notes(out string[] notes);
        Assert.Equal(0, Pages(work, "--no-cache").Code);
        Assert.False(Directory.Exists(work.PathOf("cache")));
        string[] files = [.. Directory.GetFiles(work.PathOf("out")).Order()];
        Assert.Equal(Many + 1, files.Length);
        Dictionary<string, string> made = files.ToDictionary(file => file, File.ReadAllText);
        Pages(work);
        var old = new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        string Page(int index) => work.PathOf($"out/{index:00}.html");
        Enumerable.Range(0, Many).ToList().ForEach(index => File.SetLastWriteTimeUtc(Page(index), old));
        Assert.Equal(0, Pages(work).Code);
        Assert.All(Enumerable.Range(0, Many), index => Assert.Equal(old, File.GetLastWriteTimeUtc(Page(index))));

        File.Delete(Page(0));
        File.AppendAllText(Page(1), "<!-- more -->");
        File.AppendAllText(notes[2], "  gums white\n");
        Pages(work);
        Assert.All(files.Where(file => file != Page(2) && !file.EndsWith("index.html", StringComparison.Ordinal)), file => Assert.Equal(made[file], File.ReadAllText(file)));
        Assert.Contains("gums white", File.ReadAllText(Page(2)), StringComparison.Ordinal);
        Assert.Equal(old, File.GetLastWriteTimeUtc(Page(3)));

        work.Note(Rules, "pets/our.hnote-rules");
        Pages(work);
        Assert.NotEqual(made[Page(3)], File.ReadAllText(Page(3)));
    }

    private static Outcome Pages(Workspace work, params string[] options) => Hnote.RunWith(
        [.. Hnote.Command, "page", work.PathOf("pets"), "--out", work.PathOf("out"), "--today", Hnote.Today, .. options], null, ("XDG_CACHE_HOME", work.PathOf("cache")));

    private static Workspace Notes(out string[] notes)
    {
        var work = new Workspace();
        notes = [.. Enumerable.Range(0, Many).Select(index => work.Note($"pet Pet {index}\nspecies dog\nborn 2020-01-01\n2026-11-20 check\n  rr 26 asleep\n", $"pets/{index:00}.hnote"))];
        return work;
    }

    private static Outcome Check(Workspace work, params string[] options) => Hnote.RunWith(
        [.. Hnote.Command, "check", work.PathOf("pets"), .. options.Contains("--today") ? (string[])[] : ["--today", Hnote.Today], .. options], null, ("XDG_CACHE_HOME", work.PathOf("cache")));

    private static string Kept(Workspace work) => Assert.Single(Directory.GetFiles(work.PathOf("cache/hnote")));

    private static void Rewrite(string file, Func<byte[], byte[]> change) => Sign(file, change(File.ReadAllBytes(file)[32..]));

    private static void Sign(string file, byte[] payload) => File.WriteAllBytes(file, [.. System.Security.Cryptography.SHA256.HashData(payload), .. payload]);

    private static byte[] Replace(byte[] bytes, string from, string to)
    {
        byte[] found = System.Text.Encoding.UTF8.GetBytes(from);
        byte[] other = System.Text.Encoding.UTF8.GetBytes(to.PadRight(from.Length));
        int at = bytes.AsSpan().IndexOf(found);
        Assert.True(at >= 0 && other.Length == found.Length);
        other.CopyTo(bytes, at);
        return bytes;
    }
}
