using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.Rendering;

namespace HealthNotes.Tests.LanguageServer;

/// <summary>Where the page goes that an editor opens: never over a file of the user's own.</summary>
public sealed class PageFileTests : IDisposable
{
    private const string Page = "<p>page</p>" + PageMark.Html;
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("tansy.hnote", "tansy.html")] // the user's own page
    [InlineData("n.html", "n.html")] // the note has a page's name
    public void A_file_of_the_users_own_is_left_alone(string note, string own)
    {
        File.WriteAllText(Path.Combine(folder, note), "pet Tansy\n");
        File.WriteAllText(Path.Combine(folder, own), "mine");
        string made = PageFile.Write(Uris.Of(Path.Combine(folder, note)), Page);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(folder, own)));
        AssertPrivate(made);
    }

    [Fact]
    public void A_page_of_no_file_is_for_the_user_alone()
    {
        string one = PageFile.Write("untitled:a", Page);
        string two = PageFile.Write("untitled:a", Page);
        Assert.NotEqual(Path.GetDirectoryName(one), Path.GetDirectoryName(two)); // nobody can make the folder before
        AssertPrivate(one);
        AssertPrivate(two);
    }

    [Fact]
    public void The_page_is_beside_its_note_and_replaces_an_older_one()
    {
        string note = Path.Combine(folder, "tansy.hnote");
        File.WriteAllText(note, "pet Tansy\n");
        Assert.Equal(Path.Combine(folder, "tansy.html"), PageFile.Write(Uris.Of(note), Page));
        Assert.Equal(Path.Combine(folder, "tansy.html"), PageFile.Write(Uris.Of(note), Page + "2"));
        Assert.Equal(Page + "2", File.ReadAllText(Path.Combine(folder, "tansy.html")));
    }

    private static void AssertPrivate(string made)
    {
        Assert.Equal(Page, File.ReadAllText(made));
        string place = Path.GetDirectoryName(made)!;
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(place));
        }

        Directory.Delete(place, recursive: true);
    }
}
