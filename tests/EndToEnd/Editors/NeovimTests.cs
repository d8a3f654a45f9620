using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>Real Neovim reads along.</summary>
public class NeovimTests
{
    private const string Note = """
        # Invented demo data: a dog that does not exist.
        pet Marlow
        species dog
        2026-11-25 check
          gumss pink
          coat glo
          hr   18/15s

        """;

    [SkippableFact]
    public async Task Neovim_shows_findings_mends_completes_and_formats()
    {
        string neovim = ExternalTool.Find("HNOTE_NEOVIM", "apt-get install neovim", "/usr/bin/nvim");
        string folder = Directory.CreateTempSubdirectory("hnote-neovim-").FullName;
        try
        {
            string note = Path.Combine(folder, "marlow.hnote");
            await File.WriteAllTextAsync(note, Note);
            (int code, string output) = await Programs.RunAsync(
                neovim,
                folder,
                ["--headless", "--clean", "-n", "-c", $"luafile {Repository.PathOf("tests/EndToEnd/Editors/session.lua")}"],
                ("HNOTE_COMMAND", string.Join('\n', Programs.LanguageServer)),
                ("HNOTE_NOTE", note),
                ("HOME", folder),
                ("XDG_STATE_HOME", folder),
                ("DOTNET_CLI_HOME", folder));
            Assert.True(code == 0, output);
            Assert.Contains("diagnostic: unknown-line", output, StringComparison.Ordinal);
            Assert.Contains("code action: ", output, StringComparison.Ordinal);
            Assert.Contains("completion: glossy", output, StringComparison.Ordinal);
            Assert.Contains("formatting: ", output, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
