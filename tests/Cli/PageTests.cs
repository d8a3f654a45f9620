using System.Text;

namespace HealthNotes.Cli.Tests;

/// <summary>The command <c>page</c>: whom it is for, its units, its pictures, its formats.</summary>
public class PageTests
{
    private const string Note = "# Invented.\npet Marlow\nspecies dog\nborn 2017-03\nphone 01632 960142 (invented)\n2026-09-01 visit\n  weight 27kg\n2026-10-04 check\n  weight 26kg\n  temp 38.6C rectal\n  photo in.png\n  photo sub/in.png\n  photo ../out.png\n  photo link.png\n  photo far/out.png\n  photo /etc/hostname\n";

    /// <summary>A picture of one red pixel.</summary>
    private static readonly byte[] Png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4z8AAAAMBAQDJ/pLvAAAAAElFTkSuQmCC");

    [Fact]
    public void Only_pictures_in_the_notes_folder_are_shown()
    {
        using var work = new Workspace();
        work.Bytes(Png, "out.png");
        string note = work.Note(Note, "pet/note.hnote");
        work.Bytes(Png, "pet/in.png");
        work.Bytes(Png, "pet/sub/in.png");
        File.CreateSymbolicLink(work.PathOf("pet/link.png"), work.PathOf("out.png"));
        File.CreateSymbolicLink(work.PathOf("pet/far"), work.Folder);
        string page = Hnote.Run("page", note, "--out", "-", "--today", Hnote.Today).Output;
        Assert.Equal(2, page.Split("<img ").Length - 1);
        Assert.Equal(4, page.Split("not shown: only pictures in the note&#39;s folder are shown").Length - 1);
    }

    [Fact]
    public void A_shared_page_has_a_name_of_its_own_and_no_telephone_number()
    {
        using var work = new Workspace();
        string note = work.Note(Note);
        work.Bytes(Png, "in.png");
        Outcome outcome = Hnote.Run("page", note, "--for", "share", "--photo", "in.png", "--today", Hnote.Today);
        Assert.Equal(0, outcome.Code);
        string page = File.ReadAllText(work.PathOf("note-shared.html"));
        Assert.DoesNotContain("01632", page, StringComparison.Ordinal);
        Assert.DoesNotContain("hostname", page, StringComparison.Ordinal);
        Assert.Equal(1, page.Split("<img ").Length - 1);
        Assert.Contains("01632", Hnote.Run("page", note, "--out", "-").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_that_the_note_does_not_name_is_refused()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("page", work.Note(Note), "--for", "share", "--photo", "inn.png");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("--photo inn.png: the note names no such picture; did you mean in.png?", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal(2, Hnote.Run("page", work.Note(Note), "--photo", "in.png").Code);
    }

    [Fact]
    public void Units_and_the_day_of_comparing_can_be_asked_for()
    {
        using var work = new Workspace();
        string note = work.Note(Note);
        string metric = Hnote.Run("page", note, "--out", "-", "--format", "markdown", "--today", Hnote.Today).Output;
        Assert.Contains("**Last visit 1 Sep**", metric, StringComparison.Ordinal);
        Assert.Contains("4 % from 27 kg (1 Sep)", metric, StringComparison.Ordinal);
        string us = Hnote.Run("page", note, "--out", "-", "--format", "markdown", "--units", "us", "--since", "2026-10-01", "--today", Hnote.Today).Output;
        Assert.Contains("## Since 1 Oct", us, StringComparison.Ordinal);
        Assert.Contains("57.3 lb", us, StringComparison.Ordinal);
        Assert.DoesNotContain(" kg", us, StringComparison.Ordinal);
        Assert.Contains("101.5 \u00B0F", us, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pdf_without_a_browser_says_what_to_install()
    {
        using var work = new Workspace();
        string note = work.Note(Note);
        Outcome outcome = Hnote.RunWith([.. Hnote.Command.Select(Hnote.Absolute), "page", note, "--format", "pdf"], null, ("PATH", work.Folder), ("HNOTE_CHROMIUM", ""));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("a PDF needs Chromium, and none was found", outcome.Errors, StringComparison.Ordinal);
        Assert.False(outcome.ShowsInternals);
        Assert.False(File.Exists(work.PathOf("note.pdf")));
        Assert.Contains("there is no such file", Hnote.RunWith([.. Hnote.Command, "page", note, "--format", "pdf"], null, ("HNOTE_CHROMIUM", work.PathOf("none"))).Errors, StringComparison.Ordinal);
        Assert.Contains("can't be started", Hnote.RunWith([.. Hnote.Command, "page", note, "--format", "pdf"], null, ("HNOTE_CHROMIUM", note)).Errors, StringComparison.Ordinal);
    }

    /// <summary>A browser of the test's own: what is handed to it, and what is done with its file.</summary>
    [Fact]
    public void A_pdf_is_printed_by_the_browser_and_says_the_day_asked_for()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var work = new Workspace();
        string browser = work.Note("#!/bin/sh\nfor a in \"$@\"; do case $a in --print-to-pdf=*) out=${a#*=};; file:*) in=${a#file://};; esac; done\ngrep -c 'size: Letter' \"$in\" > \"$out\"\nprintf '%%PDF-1.4 /CreationDate (D:20990101010101+00) /ModDate (D:20990101010101+00)' >> \"$out\"\n", "browser");
        File.SetUnixFileMode(browser, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Outcome outcome = Hnote.RunWith([.. Hnote.Command, "page", work.Note(Note), "--out", work.PathOf("v.pdf"), "--paper", "letter", "--today", Hnote.Today], null, ("HNOTE_CHROMIUM", browser));
        Assert.Equal("", outcome.Errors);
        Assert.Equal("1\n%PDF-1.4 /CreationDate (D:20261125000000+00) /ModDate (D:20261125000000+00)\n% made by hnote\n", Encoding.ASCII.GetString(File.ReadAllBytes(work.PathOf("v.pdf"))));
    }

    [Fact]
    public void Text_of_the_owner_is_shared_only_after_it_was_shown()
    {
        using var work = new Workspace();
        string note = work.Note(Note + "  > He rang Pat, 01632 960142.\n  hr 18/15s by the window\n");
        string[] share = ["page", note, "--for", "share", "--out", "-", "--today", Hnote.Today];
        Outcome plain = Hnote.Run(share);
        Assert.Equal((0, ""), (plain.Code, plain.Errors));
        Assert.DoesNotContain("window", plain.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("He rang", plain.Output, StringComparison.Ordinal);
        Outcome asked = Hnote.Run([.. share, "--with-text"]);
        Assert.Equal((2, ""), (asked.Code, asked.Output));
        Assert.Contains("  > He rang Pat, [left out].", asked.Errors, StringComparison.Ordinal);
        Assert.Contains("--yes", asked.Errors, StringComparison.Ordinal);
        Outcome agreed = Hnote.Run([.. share, "--with-text", "--yes"]);
        Assert.Equal(0, agreed.Code);
        Assert.Contains("  hr 18/15s by the window", agreed.Errors, StringComparison.Ordinal);
        Assert.Contains("He rang Pat, [left out].", agreed.Output, StringComparison.Ordinal);
        Assert.Equal(2, Hnote.Run("page", note, "--with-text").Code);
    }

    [SkippableFact]
    public void A_pdf_names_no_system_and_no_time_zone()
    {
        Skip.If(OperatingSystem.IsWindows(), "the test's browser is a script");
        using var work = new Workspace();
        string browser = work.Note("#!/bin/sh\nfor a in \"$@\"; do case $a in --print-to-pdf=*) out=${a#*=};; esac; done\nprintf '%%PDF-1.4 /Creator (Mozilla \\\\(X11; Linux\\\\) x) /CreationDate (D:20990101010101+05'\"'30'\"')' > \"$out\"\n", "browser");
        File.SetUnixFileMode(browser, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Outcome outcome = Hnote.RunWith([.. Hnote.Command, "page", work.Note(Note), "--for", "share", "--out", work.PathOf("v.pdf"), "--today", Hnote.Today], null, ("HNOTE_CHROMIUM", browser));
        Assert.Equal("", outcome.Errors);
        Assert.Equal("%PDF-1.4 /Creator (hnote                   ) /CreationDate (D:20261125000000+00'00')\n% made by hnote\n", Encoding.ASCII.GetString(File.ReadAllBytes(work.PathOf("v.pdf"))));
    }
}
