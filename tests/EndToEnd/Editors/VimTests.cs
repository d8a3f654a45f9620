using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// The files of <c>editor-client/vim</c>, in a real Neovim that has no language client set up: the shapes of lines are told
/// apart, and the note is put in order by the program on the PATH.
/// </summary>
public sealed class VimTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-vim-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Lines_are_painted_by_their_shape_and_the_note_is_put_in_order()
    {
        string neovim = ExternalTool.Find("HNOTE_NEOVIM", "apt-get install neovim", "/usr/bin/nvim", "/usr/local/bin/nvim");
        string note = Path.Combine(folder, "visit.hnote");
        string seen = Path.Combine(folder, "seen.txt");
        await File.WriteAllTextAsync(note, "# invented\npet Marlow\nspecies dog\n\n2026-11-21   log\n  08:15  stool   soft\n  lump L-flank @fatty   8mm soft\n  > He is himself.\n");

        ToolRun run = await ToolRun.OfAsync(
            folder,
            [
                neovim, "--headless", "-i", "NONE", "-u", "NONE", "--cmd", $"set noswapfile rtp^={Repository.PathOf("editor-client/vim")}",
                "--cmd", "filetype plugin on | syntax on", note,
                "-c", "let seen = [&filetype, &commentstring]",
                "-c", "for place in [[1, 1], [2, 1], [5, 1], [6, 3], [6, 10], [7, 17], [8, 3]] | call add(seen, synIDattr(synID(place[0], place[1], 1), 'name')) | endfor",
                "-c", "normal! gggqG",
                "-c", $"call writefile(seen + getline(5, 8), '{seen}')",
                "-c", "qall!",
            ],
            ("PATH", BuiltServer.OnPath(folder)));

        Assert.True(File.Exists(seen), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        Assert.Equal(
            [
                "hnote", "# %s", "hnoteComment", "hnoteWord", "hnoteDate", "hnoteTime", "hnoteTimedWord", "hnoteTag", "hnoteText",
                "2026-11-21 log", "  08:15 stool soft", "  lump L-flank @fatty 8mm soft", "  > He is himself.",
            ],
            await File.ReadAllLinesAsync(seen));
    }
}
