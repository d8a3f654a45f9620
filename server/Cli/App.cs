using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using HealthNotes.Cli.Commands;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Cli;

/// <summary>Puts the commands together and turns what can go wrong into a message and an exit code.</summary>
internal static class App
{
    /// <summary>Runs <c>hnote</c> with these arguments.</summary>
    public static int Run(string[] args)
    {
        try
        {
            ParseResult parsed = Root().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (args.Length > 0 && (UnknownOption(parsed, args) ?? WrongUse(parsed)) is { } wrong)
            {
                string name = HelpWithExamples.NameOf(parsed.CommandResult.Command);
                throw new RefusedException($"{wrong}{Environment.NewLine}{(name == "hnote" ? "hnote --help lists the commands." : $"hnote {name} --help shows how to use it.")}");
            }

            int code = parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = Terminal.Output, Error = Terminal.Error });
            return parsed.Action is ParseErrorAction ? ExitCodes.Refused : code;
        }
        catch (RefusedException refused)
        {
            Terminal.Error.WriteLine($"hnote: {refused.Message}");
            return ExitCodes.Refused;
        }
        catch (IOException broken) when (broken.Message.Contains("pipe", StringComparison.OrdinalIgnoreCase))
        {
            // the reader at the other end has seen enough, as with `| head`
            return ExitCodes.Fine;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Terminal.Error.WriteLine($"hnote: an internal error in hnote ({fault.GetType().Name}: {fault.Message}). Your files are unchanged. Please report it with the note that caused it.");
            return ExitCodes.Fault;
        }
    }

    /// <summary>The library reads an option that it does not know as an argument: a misspelt one would name a file.</summary>
    private static string? UnknownOption(ParseResult parsed, string[] args)
    {
        HashSet<string> known = [];
        for (SymbolResult? result = parsed.CommandResult; result is not null; result = result.Parent)
        {
            known.UnionWith(result is CommandResult { Command: { } command } ? command.Options.SelectMany(option => option.Aliases.Append(option.Name)) : []);
        }

        string? unknown = args.TakeWhile(arg => arg != "--").Where(arg => arg.Length > 1 && arg[0] == '-')
            .Select(arg => arg.Split('=', ':')[0]).FirstOrDefault(name => !known.Contains(name));
        return unknown is null ? null : $"unknown option {unknown}.{DidYouMean(unknown, known)} For a file of that name write ./{unknown}";
    }

    /// <summary>What is wrong with the use of a command; null when it can run.</summary>
    private static string? WrongUse(ParseResult parsed) =>
        parsed.Action is not ParseErrorAction ? null
        : parsed.CommandResult.Command is RootCommand root && parsed.UnmatchedTokens is [var typed, ..] ? $"unknown command {typed}.{DidYouMean(typed, root.Subcommands.Select(command => command.Name))}"
        : string.Join(Environment.NewLine, parsed.Errors.Select(error => error.Message.Split(" as expected type ")[0]).Distinct());

    private static string DidYouMean(string typed, IEnumerable<string> known) => NearestWord.Find(typed, known) is { } nearest ? $" Did you mean {nearest}?" : "";

    private static RootCommand Root()
    {
        var root = new RootCommand("""
            Health notes for your dog or cat: plain-text notes that are checked as you write them, and turned into one clean
            page for the clinic. hnote compares and describes; it makes no diagnosis. A veterinarian decides.
            """)
        {
            NewCommand.Create(),
            CheckCommand.Create(),
            ReadCommand.Create(),
            PageCommand.Create(),
            WatchCommand.Create(),
            SheetCommand.Create(),
            CardCommand.Create(),
            DueCommand.Create(),
            FormatCommand.Create(),
            MergeCommand.Create(),
            ValuesCommand.Create(),
            ExportCommand.Create(),
            ImportCommand.Create(),
            SchemaCommand.Create(),
            AboutCommand.Create(),
            LspCommand.Create(),
            WebCommand.Create(),
            CompletionCommand.Create(),
        };
        HelpOption help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExamples((HelpAction)help.Action!);
        return root;
    }
}
