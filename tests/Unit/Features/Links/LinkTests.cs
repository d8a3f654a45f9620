using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Links;
using HealthNotes.Grammar.Text;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Links;

public class LinkTests
{
    private const string Head = "2026-10-04 check\n";

    [Theory]
    [InlineData("photo ‹left-ear.jpg›", "left-ear.jpg")]
    [InlineData("  photo ‹left ear.JPG› after the bath # here.jpg", "left ear.JPG")]
    [InlineData("  photo ‹pictures/a.png›", "pictures/a.png")]
    [InlineData("  photo ‹pictures\\a.png›", "pictures/a.png")]
    [InlineData("  photo ‹./pictures/../a.png›", "a.png")]
    [InlineData("  photo ‹犬の耳 \ud83d\udc36.jpg›", "犬の耳 \ud83d\udc36.jpg")]
    public void A_photo_leads_to_its_file(string line, string path)
    {
        Cursor at = Cursor.In(Head + line + "\n");
        Assert.Equal([new NoteLink(at.Range, path, IsMissing: false)], LinkFeature.In(at.Document, _ => true).AsEnumerable());
        Assert.Equal([new NoteLink(at.Range, path, IsMissing: true)], LinkFeature.In(at.Document, _ => false).AsEnumerable());
        Assert.Empty(LinkFeature.Missing(at.Document, asked => asked == path));
    }

    [Fact]
    public void A_missing_file_is_told()
    {
        Document note = Cursor.Note(Head + "  photo left-ear.jpg\n  photo there.jpg\n");
        Assert.Equal([new MissingPhoto(1, new TextSpan(8, 12), "photo left-ear.jpg is not beside the note")], LinkFeature.Missing(note, path => path == "there.jpg").AsEnumerable());
    }

    [Theory]
    [InlineData("../a.jpg", "out of the note's folder")]
    [InlineData("a/../../b.jpg", "out of the note's folder")]
    [InlineData("..\\a.jpg", "out of the note's folder")]
    [InlineData("/etc/a.jpg", "address of its own")]
    [InlineData("\\\\host\\a.jpg", "address of its own")]
    [InlineData("C:\\a.jpg", "address of its own")]
    [InlineData("https://example.org/a.jpg", "address of its own")]
    [InlineData("file:a.jpg", "address of its own")]
    [InlineData("~/a.jpg", "address of its own")]
    [InlineData("a\u0001.jpg", "no file name can have")]
    [InlineData(".", "isn't a file name")]
    public void What_leads_elsewhere_is_no_link_and_says_so(string file, string why)
    {
        Document note = Cursor.Note($"{Head}  photo {file}\n");
        Assert.Empty(LinkFeature.In(note, _ => throw new InvalidOperationException("it was looked for")));
        Assert.Contains(why, Assert.Single(LinkFeature.Missing(note, _ => throw new InvalidOperationException("it was looked for"))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("photo\n")]
    [InlineData("2026-10-04 check\n  > photo a.jpg\n  # photo a.jpg\n")]
    public void Where_no_photo_is_named_there_is_none(string text)
    {
        Assert.Empty(LinkFeature.In(Cursor.Note(text), _ => true));
        Assert.Empty(LinkFeature.Missing(Cursor.Note(text), _ => false));
    }

    [Fact]
    public void Links_stay_in_their_lines_and_below_the_folder() => Gen.Select(
        Soup.Note, Gen.OneOf("..", ".", "a", "/", "\\", ":", "~", " ", "b.jpg", "%2e").Array[1, 6].Select(parts => string.Concat(parts))).ForAll((text, file) =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text + "\nphoto " + file, Cursor.Today);
        foreach (NoteLink link in LinkFeature.In(note, path => path.Length > 3))
        {
            Assert.True(link.Range.Start < link.Range.End && note.Clamp(link.Range.End) == link.Range.End);
            Assert.Equal(link.Path.Length <= 3, link.IsMissing);
            Assert.DoesNotContain(link.Path.Split('/'), part => part is ".." or "." or "");
            Assert.DoesNotContain(':', link.Path);
        }
    }, iter: Effort.Times(500));
}
