using System.Globalization;
using System.Text;
using System.Text.Json;
using Ical.Net.CalendarComponents;

namespace HealthNotes.Cli.Tests;

/// <summary>The commands <c>due</c>, <c>sheet</c>, <c>new check</c> and <c>page FOLDER</c>.</summary>
public class DueAndSheetTests
{
    private const string Marlow = "# Invented.\npet Marlow\nspecies dog\nborn 2017-03\nhome-check every 30d\ndue chip in 4w\n2026-10-04 check\n  weight 27kg\n  lump L-flank 12mm\n  recheck ear L in 2w\n  due booster 2026-12-01\n";

    [Fact]
    public void What_is_due_is_listed_by_day_with_its_line()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow, "marlow.hnote");
        string[] lines = Hnote.Run("due", note, "--today", Hnote.Today).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal($"Look again at left ear: due 18 Oct, 38 days ago ({note}:10)", lines[0]);
        Assert.Equal($"Next home check (every 30 days): due 3 Nov, 22 days ago ({note}:7)", lines[1]);
        Assert.Equal($"booster: in 6 days, 1 Dec ({note}:11)", lines[2]);
        Assert.Contains($"chip: no day given ({note}:6)", lines);
        string late = work.Note(Marlow + "2026-11-20 log\n  due stitches out 2026-11-24\n", "late.hnote");
        Assert.StartsWith("Look again at left ear: due 18 Oct, 38 days ago", Hnote.Run("due", late, "--today", Hnote.Today).Output, StringComparison.Ordinal);
        Assert.StartsWith("stitches out: due yesterday", Hnote.Run("due", late, "--today", Hnote.Today).Output.Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_is_a_contract()
    {
        using var work = new Workspace();
        work.Note(Marlow, "marlow.hnote");
        work.Note("pet Tansy\nspecies cat\n", "tansy.hnote");
        using var json = JsonDocument.Parse(Hnote.Run("due", work.Folder, "--json", "--today", Hnote.Today).Output);
        Assert.Equal("2026-11-25", json.RootElement.GetProperty("today").GetString());
        JsonElement first = json.RootElement.GetProperty("due")[0];
        Assert.Equal(["path", "line", "pet", "kind", "what", "date", "days", "source"], first.EnumerateObject().Select(part => part.Name));
        Assert.Equal(("Marlow", "recheck", 10, "2026-10-18", -38), (first.GetProperty("pet").GetString(), first.GetProperty("kind").GetString(), first.GetProperty("line").GetInt32(), first.GetProperty("date").GetString(), first.GetProperty("days").GetInt32()));
        JsonElement last = json.RootElement.GetProperty("due").EnumerateArray().Last();
        Assert.Equal(JsonValueKind.Null, last.GetProperty("date").ValueKind);
        Assert.Equal("Nothing is due by what is written down.\n", Hnote.Run("due", work.PathOf("tansy.hnote"), "--today", Hnote.Today).Output);
    }

    [Theory]
    [InlineData("0", 2)] // overdue
    [InlineData("6", 3)] // the booster too
    [InlineData("5", 2)]
    public void Days_leave_out_what_falls_due_later_and_what_has_no_day(string days, int lines)
    {
        using var work = new Workspace();
        string note = work.Note("pet X\nspecies dog\ndue chip\n2026-11-01 log\n  recheck ear L in 2w\n  due stitches 2026-11-24\n  due booster 2026-12-01\n  due dental 2027-12-01\n", "x.hnote");
        Assert.Equal(lines, Hnote.Run("due", note, "--days", days, "--today", Hnote.Today).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal(2, Hnote.Run("due", note, "--days", "-1", "--today", Hnote.Today).Code);
    }

    [Fact]
    public void The_calendar_is_read_back_by_the_library()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow.Replace("species dog\n", "species dog\nclinic Two Rivers\nphone 01632 960142\n", StringComparison.Ordinal), "marlow.hnote");
        string file = work.PathOf("pets.ics");
        Outcome outcome = Hnote.Run("due", note, "--calendar", file, "--today", Hnote.Today);
        Assert.Equal(0, outcome.Code);
        Assert.Contains("1 without a day left out", outcome.Output, StringComparison.Ordinal);
        Ical.Net.Calendar calendar = Ical.Net.Calendar.Load(File.ReadAllText(file))!;
        CalendarEvent booster = calendar.Events.Single(one => one.Summary!.Contains("booster", StringComparison.Ordinal));
        Assert.Equal("Marlow: booster", booster.Summary);
        Assert.Equal(new DateOnly(2026, 12, 1), booster.Start!.Date);
        Assert.False(booster.Start.HasTime);
        Assert.Equal("TRANSPARENT", booster.Transparency);
        Assert.Equal(Ical.Net.DataTypes.Duration.FromHours(-15), Assert.Single(booster.Alarms).Trigger!.Duration);
        Assert.StartsWith("Clinic: Two Rivers, 01632 960142\n", booster.Description!.ReplaceLineEndings("\n"), StringComparison.Ordinal);

        // what is overdue stands on today and rings no more; nothing stands on a day that is over
        CalendarEvent overdue = calendar.Events.Single(one => one.Summary!.Contains("left ear", StringComparison.Ordinal));
        Assert.Equal("Marlow: Look again at left ear: due 18 Oct, 38 days ago", overdue.Summary);
        Assert.Empty(overdue.Alarms);
        Assert.All(calendar.Events, one => Assert.True(one.Start!.Date >= new DateOnly(2026, 11, 25)));

        // the check is done: its event moves and keeps its name
        work.Note(Marlow + "2026-11-20 check\n  weight 27kg\n", "marlow.hnote");
        Hnote.Run("due", note, "--calendar", file, "--today", Hnote.Today);
        CalendarEvent[] before = [.. calendar.Events.Where(one => one.Summary!.Contains("home check", StringComparison.Ordinal))];
        CalendarEvent after = Ical.Net.Calendar.Load(File.ReadAllText(file))!.Events.Single(one => one.Summary!.Contains("home check", StringComparison.Ordinal));
        Assert.Equal(Assert.Single(before).Uid, after.Uid);
        Assert.NotEqual(before[0].Start!.Date, after.Start!.Date);
    }

    /// <summary>
    /// RFC 5545: lines end with CR LF and hold at most 75 octets (3.1); commas, semicolons and backslashes in text are escaped
    /// (3.3.11); a calendar has PRODID and VERSION (3.6); an event has UID and DTSTAMP, and its DTSTART may be a date (3.6.1, 3.8.2.4).
    /// </summary>
    [Fact]
    public void The_calendar_keeps_to_the_standard_whatever_the_note_says()
    {
        using var work = new Workspace();
        string hostile = "a, b; c\\d \U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415\U0001F415 \u05E9\u05DC\u05D5\u05DD BEGIN:VEVENT";
        string note = work.Note($"pet {hostile}\nspecies dog\ndue booster 2026-12-01\ndue worming 2026-12-02\n");
        string file = work.PathOf("x.ics");
        Hnote.Run("due", note, "--calendar", file, "--today", Hnote.Today);
        byte[] bytes = File.ReadAllBytes(file);
        string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        Assert.Equal(text.Count(c => c == '\n'), text.Split("\r\n").Length - 1);
        Assert.All(text.Split("\r\n"), line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        string[] lines = text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("BEGIN:VCALENDAR", lines[0]);
        Assert.Equal("END:VCALENDAR", lines[^1]);
        Assert.Single(lines, line => line == "VERSION:2.0");
        Assert.Single(lines, line => line.StartsWith("PRODID:", StringComparison.Ordinal));
        Assert.Equal(2, lines.Count(line => line == "BEGIN:VEVENT"));
        Assert.Equal(2, lines.Count(line => line == "END:VEVENT"));
        Assert.Equal(2, lines.Where(line => line.StartsWith("UID:", StringComparison.Ordinal)).Distinct().Count());
        Assert.All(lines.Where(line => line.StartsWith("DTSTAMP", StringComparison.Ordinal)), line => Assert.Equal("DTSTAMP:20261125T000000Z", line));
        Assert.All(lines.Where(line => line.StartsWith("DTSTART", StringComparison.Ordinal)), line => Assert.True(DateOnly.TryParseExact(line.Replace("DTSTART;VALUE=DATE:", "", StringComparison.Ordinal), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)));
        Assert.Contains(lines, line => line.StartsWith("SUMMARY:a\\, b\\; c\\\\d ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_note_and_day_give_the_same_calendar_and_sheet()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow);
        foreach (string to in new[] { "a", "b" })
        {
            Hnote.Run("due", note, "--calendar", work.PathOf(to + ".ics"), "--today", Hnote.Today);
            Hnote.Run("sheet", note, "--out", work.PathOf(to + ".html"), "--today", Hnote.Today);
        }

        Assert.Equal(File.ReadAllBytes(work.PathOf("a.ics")), File.ReadAllBytes(work.PathOf("b.ics")));
        Assert.Equal(File.ReadAllBytes(work.PathOf("a.html")), File.ReadAllBytes(work.PathOf("b.html")));
        Assert.Contains("@page { size: A4;", File.ReadAllText(work.PathOf("a.html")), StringComparison.Ordinal);
        Assert.Contains("@page { size: Letter;", Hnote.Run("sheet", note, "--out", "-", "--paper", "letter").Output, StringComparison.Ordinal);
        string us = work.Note("pet B\nspecies dog\nunits us\n", "us.hnote");
        Assert.Contains("@page { size: Letter;", Hnote.Run("sheet", us, "--out", "-").Output, StringComparison.Ordinal);
        Assert.Contains("@page { size: A4;", Hnote.Run("sheet", us, "--out", "-", "--paper", "a4").Output, StringComparison.Ordinal);
        string log = Hnote.Run("sheet", note, "--log", "--today", Hnote.Today).Output;
        Assert.StartsWith($"Wrote {work.PathOf("note-log.html")}: one side of A4.", log, StringComparison.Ordinal);
        Assert.Contains("home-care log", File.ReadAllText(work.PathOf("note-log.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_card_is_one_html_file_for_the_paper_and_the_animal()
    {
        using var work = new Workspace();
        string card = work.PathOf("card.html");
        Assert.Equal((0, $"Wrote {card}: one page of A4\n"), (Hnote.Run("card", "--out", card).Code, Hnote.Run("card", "--out", card).Output));
        Assert.Contains("@page { size: A4;", File.ReadAllText(card), StringComparison.Ordinal);
        string letter = Hnote.Run("card", "--out", "-", "--paper", "letter", "--species", "cat").Output;
        Assert.Contains("@page { size: Letter;", letter, StringComparison.Ordinal);
        Assert.DoesNotContain("Heaving with nothing coming up", letter, StringComparison.Ordinal);
        Assert.Equal(2, Hnote.Run("card", "--species", "hamster").Code);
    }

    [Fact]
    public void A_new_check_is_added_once_and_says_nothing_that_was_not_looked_at()
    {
        using var work = new Workspace();
        string note = work.Bytes([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Marlow.Replace("\n", "\r\n", StringComparison.Ordinal))]);
        byte[] before = File.ReadAllBytes(note);
        Outcome outcome = Hnote.Run("new", "check", note, "--today", Hnote.Today);
        Assert.Equal((0, ""), (outcome.Code, outcome.Errors));
        byte[] after = File.ReadAllBytes(note);
        Assert.Equal(before, after[..before.Length]);
        string added = Encoding.UTF8.GetString(after[before.Length..]);
        Assert.StartsWith("\r\n2026-11-25 check\r\n", added, StringComparison.Ordinal);
        Assert.All(added.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1), line => Assert.StartsWith("  # ", line, StringComparison.Ordinal));
        Assert.Contains("  # lump L-flank\r\n", added, StringComparison.Ordinal);
        Outcome again = Hnote.Run("new", "check", note, "--today", Hnote.Today);
        Assert.Equal(2, again.Code);
        Assert.Contains("has a check of 2026-11-25 already, in line 13", again.Errors, StringComparison.Ordinal);
        Assert.Equal(after, File.ReadAllBytes(note));
        Assert.Equal(2, Hnote.Run("new", "check", work.PathOf("none.hnote")).Code);
    }

    /// <summary>What was to be looked at again before the day that is asked for is left out of the sheet, and out of a folder's problems.</summary>
    [Fact]
    public void The_sheet_and_the_pages_of_a_folder_take_a_day_to_start_from()
    {
        using var work = new Workspace();
        string note = work.Note("pet A\nspecies dog\n2026-08-20 log\n  recheck ear L in 1w\n  gait LH lame\n2026-10-02 log\n  ate all\n");
        foreach ((string since, bool shown) in new[] { ("2026-08-01", true), ("2026-10-01", false) })
        {
            Assert.Equal(shown, Hnote.Run("sheet", note, "--out", "-", "--since", since, "--today", Hnote.Today).Output.Contains("Look again at left ear", StringComparison.Ordinal));
            Assert.Equal(0, Hnote.Run("page", work.Folder, "--out", work.PathOf(since), "--format", "md", "--since", since, "--today", Hnote.Today).Code);
            Assert.Equal(shown, File.ReadAllText(work.PathOf($"{since}/index.md")).Contains("lame", StringComparison.Ordinal));
            Assert.Equal(shown, File.ReadAllText(work.PathOf($"{since}/note.md")).Contains("left hind: lame", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("log", "gave carprofen|ate|water|pee|stool|walk|mood")]
    [InlineData("visit", "> can he swim?|weight|lab|known|med|stop|vaccine|recheck|due")]
    public void A_new_log_or_visit_waits_as_comments(string kind, string lines)
    {
        using var work = new Workspace();
        string note = work.Note("pet X\nspecies dog\nborn 2020-01-01\nmed carprofen 50mg every 24h from 2026-11-01\n\n2026-11-20 log\n  ask can he swim?\n");
        Assert.Equal(0, Hnote.Run("new", kind, note, "--today", Hnote.Today).Code);
        string[] added = [.. File.ReadAllText(note).Split($"2026-11-25 {kind}\n")[1].Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)];
        Assert.Equal(lines.Split('|').Select(line => "  # " + line), added);
        string again = Hnote.Run("new", kind, note, "--today", Hnote.Today).Errors;
        Assert.Equal(kind == "visit", again.Contains("has a visit of 2026-11-25 already", StringComparison.Ordinal));
        File.WriteAllText(note, File.ReadAllText(note).Replace("# ", "", StringComparison.Ordinal).Replace("Take the", "> Take the", StringComparison.Ordinal).Replace("  ate\n", "  ate all\n", StringComparison.Ordinal));
        Assert.DoesNotContain("misplaced", Hnote.Run("check", note, "--today", Hnote.Today, "--json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_has_a_page_for_each_note_and_an_index()
    {
        using var work = new Workspace();
        work.Note(Marlow, "pets/marlow.hnote");
        work.Note("pet Tansy\nspecies cat\n", "pets/the cat & co/marlow.hnote");
        work.Bytes([0xFF, 0x00, 0x80], "pets/broken.hnote");
        Outcome outcome = Hnote.Run("page", work.PathOf("pets"), "--today", Hnote.Today);
        Assert.Equal(2, outcome.Code);
        Assert.False(outcome.ShowsInternals);
        string index = File.ReadAllText(work.PathOf("pets/index.html"));
        Assert.Contains("href=\"marlow.html\"", index, StringComparison.Ordinal);
        Assert.Contains("href=\"the%20cat%20%26%20co/marlow.html\"", index, StringComparison.Ordinal);
        Assert.Contains("This note could not be read", index, StringComparison.Ordinal);
        Assert.Contains("Tansy", File.ReadAllText(work.PathOf("pets/the cat & co/marlow.html")), StringComparison.Ordinal);

        // once more over its own files, and into another folder
        Assert.Equal(2, Hnote.Run("page", work.PathOf("pets"), "--today", Hnote.Today).Code);
        File.Delete(work.PathOf("pets/broken.hnote"));
        Assert.Equal(0, Hnote.Run("page", work.PathOf("pets"), "--out", work.PathOf("out"), "--format", "markdown").Code);
        Assert.Contains("[Tansy](the%20cat%20%26%20co/marlow.md)", File.ReadAllText(work.PathOf("out/index.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void That_nothing_is_due_is_not_said_of_a_note_that_was_not_read()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("due", work.PathOf("none.hnote"), "--today", Hnote.Today);
        Assert.Equal((2, ""), (outcome.Code, outcome.Output));
        Assert.Contains("there is no such file", outcome.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("note.html", "html")]
    [InlineData("note.md", "markdown")]
    [InlineData("index.md", "markdown")]
    public void A_file_of_the_users_own_is_left_alone(string name, string format)
    {
        using var work = new Workspace();
        work.Note(Marlow);
        string own = work.Note("# Health notes of mine\n", name);
        Assert.Equal(2, Hnote.Run("page", work.Folder, "--format", format).Code);
        Assert.Equal("# Health notes of mine\n", File.ReadAllText(own));
        Assert.Equal(2, Directory.GetFiles(work.Folder).Length);
    }

    [Fact]
    public void Pets_of_one_file_name_have_calendar_names_of_their_own()
    {
        using var work = new Workspace();
        work.Note("pet A\ndue booster 2026-12-01\n", "a/n.hnote");
        work.Note("pet B\ndue booster 2026-12-02\n", "b/n.hnote");
        Hnote.Run("due", work.Folder, "--calendar", work.PathOf("both.ics"), "--today", Hnote.Today);
        Hnote.Run("due", work.PathOf("b"), "--calendar", work.PathOf("one.ics"), "--today", Hnote.Today);
        string alone = Ical.Net.Calendar.Load(File.ReadAllText(work.PathOf("one.ics")))!.Events.Single().Uid!;
        CalendarEvent[] both = [.. Ical.Net.Calendar.Load(File.ReadAllText(work.PathOf("both.ics")))!.Events];
        Assert.Equal("B: booster", both.Single(one => one.Uid == alone).Summary);
        Assert.Equal(2, both.DistinctBy(one => one.Uid).Count());
    }

    [Fact]
    public void An_index_that_is_not_ours_is_left_alone()
    {
        using var work = new Workspace();
        work.Note(Marlow);
        string index = work.Note("my own page", "index.html");
        Outcome outcome = Hnote.Run("page", work.Folder);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("was not made by hnote", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal("my own page", File.ReadAllText(index));
        Assert.False(File.Exists(work.PathOf("note.html")));
    }
}
