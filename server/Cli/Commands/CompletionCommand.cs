using System.CommandLine;
using HealthNotes.Cli.Output;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote completion SHELL</c>: prints the lines that teach a shell to complete hnote.</summary>
internal static class CompletionCommand
{
    // Each script asks hnote itself, through the library's [suggest] directive, so it never falls behind.
    private static readonly Dictionary<string, string> Scripts = new()
    {
        ["bash"] = """
            _hnote() {
              local IFS=$'\n'
              COMPREPLY=($(compgen -W "$(hnote "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
            }
            complete -o default -F _hnote hnote
            """,
        ["zsh"] = """
            _hnote() {
              local suggestions=("${(@f)$(hnote "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
              [[ -n "${suggestions[1]}" ]] && compadd -a suggestions
              _files
            }
            compdef _hnote hnote
            """,
        ["fish"] = """
            complete -c hnote -a '(hnote "[suggest:"(commandline -C)"]" (commandline -b) 2>/dev/null)'
            """,
    };

    public static Command Create()
    {
        var shell = new Argument<string>("shell") { Description = "bash, zsh or fish" };
        shell.AcceptOnlyFromAmong([.. Scripts.Keys]);
        var command = new Command("completion", "Print the lines that let your shell complete hnote with the Tab key") { shell };
        command.SetAction(parsed =>
        {
            parsed.InvocationConfiguration.Output.WriteLine(Scripts[parsed.GetValue(shell)!]);
            return ExitCodes.Fine;
        });
        return command;
    }
}
