using System.Text;
using HealthNotes.Files;

namespace HealthNotes.Tests.Files;

/// <summary>Replacing files: whole or not at all, whoever else writes.</summary>
public sealed class AtomicFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_save_made_meanwhile_is_not_lost()
    {
        string note = Path.Combine(folder, "a.hnote");
        byte[] read = "pet Marlow\n"u8.ToArray();
        File.WriteAllText(note, "pet Marlow\n2026-11-25 log\n");
        RefusedException refused = Assert.Throws<RefusedException>(() => AtomicFile.Replace(note, "pet Tansy\n"u8.ToArray(), read));
        Assert.Contains("was saved meanwhile", refused.Message, StringComparison.Ordinal);
        Assert.Equal("pet Marlow\n2026-11-25 log\n", File.ReadAllText(note));
        AtomicFile.Replace(note, "pet Tansy\n"u8.ToArray(), File.ReadAllBytes(note));
        Assert.Equal("pet Tansy\n", File.ReadAllText(note));
        Assert.Equal([note], Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void Two_writers_never_leave_half_a_file()
    {
        string page = Path.Combine(folder, "page.html");
        string[] texts = [.. Enumerable.Range(0, 8).Select(i => new string((char)('a' + i), 400_000 + i))];
        AtomicFile.Write(page, Encoding.ASCII.GetBytes(texts[0]), []);
        Parallel.For(0, 64, i =>
        {
            AtomicFile.Write(page, Encoding.ASCII.GetBytes(texts[i % 8]), []);
            Assert.Contains(File.ReadAllText(page), texts);
        });
        Assert.Equal([page], Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_new_file_takes_no_place()
    {
        string note = Path.Combine(folder, "a.hnote");
        AtomicFile.Create(note, "pet A\n", Encoding.UTF8);
        Assert.Contains("is there already", Assert.Throws<RefusedException>(() => AtomicFile.Create(note, "pet B\n", Encoding.UTF8)).Message, StringComparison.Ordinal);
        Assert.StartsWith("pet A", File.ReadAllText(note), StringComparison.Ordinal);
    }
}

/// <summary>Several notes at once.</summary>
public class EachNoteTests
{
    [Fact]
    public void A_fault_in_one_note_is_told_with_its_name_and_keeps_no_other()
    {
        List<string> done = [];
        List<string> told = [];
        var each = new EachNote(told.Add);
        each.Do(
            (string[])["a", "b", "c", "d"],
            path => path switch { "b" => throw new DivideByZeroException("by nothing"), "c" => throw new RefusedException("can't read c"), _ => path },
            (path, made, why) =>
            {
                Assert.Equal(path is "b" or "c", why is not null);
                done.AddRange(made is null ? [] : [made]);
            });

        Assert.Equal(["a", "d"], done);
        Assert.StartsWith("b: an internal error in hnote (DivideByZeroException: by nothing)", told[0], StringComparison.Ordinal);
        Assert.Equal("can't read c", told[1]);
        Assert.True(each is { Failed: true, Refused: true });
    }

    [Fact]
    public void They_are_handed_over_in_their_order_whichever_is_done_first()
    {
        string[] paths = [.. Enumerable.Range(0, 60).Select(index => $"{index}")];
        List<string> done = [];
        new EachNote(_ => { }).Do(paths, path => { Thread.SpinWait(path[^1] * 1000); return path; }, (path, _, _) => done.Add(path));
        Assert.Equal(paths, done);
    }

    [Fact]
    public void A_reader_that_has_gone_ends_all_as_itself() =>
        Assert.Throws<IOException>(() => new EachNote(_ => { }).Do<string>(["a", "b"], _ => throw new IOException("gone"), (_, _, _) => { }));
}
