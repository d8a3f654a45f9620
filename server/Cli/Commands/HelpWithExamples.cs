using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace HealthNotes.Cli.Commands;

/// <summary>The library's help, with examples below it: people copy an example sooner than they read a usage line.</summary>
internal sealed class HelpWithExamples(HelpAction plain) : SynchronousCommandLineAction
{
    private static readonly Dictionary<string, string> Examples = new()
    {
        ["hnote"] = """
              hnote new                        start a note by answering questions
              hnote check marlow.hnote         what is wrong or worrying in it
              hnote page marlow.hnote          make marlow.html, the page for the clinic
            """,
        ["new"] = """
              hnote new
              hnote new --name Marlow --species dog --born 2017-03 --sex "male neutered"
              hnote new pets/tansy.hnote --name Tansy --species cat
              hnote new check marlow.hnote     adds today's check, ready to be filled in
            """,
        ["new check"] = """
              hnote new check marlow.hnote     adds today's check, ready to be filled in
              hnote new check marlow.hnote --today 2026-11-25
            """,
        ["check"] = """
              hnote check marlow.hnote         one note
              hnote check pets                 every note in a folder
              hnote check --all marlow.hnote   findings of older entries too
              hnote check --json pets          for other programs
              hnote check --format sarif pets > findings.sarif
                                               for a code host or a viewer
              hnote check pets --level call --baseline known.txt
                                               only new reasons to phone, and lines that were not understood
            """,
        ["read"] = """
              hnote read marlow.hnote          each line beside its reading
              hnote read --json marlow.hnote   for other programs
            """,
        ["page"] = """
              hnote page marlow.hnote                       makes marlow.html
              hnote page marlow.hnote --out visit.md        makes Markdown instead
              hnote page marlow.hnote --out visit.pdf       makes a PDF, with a Chromium that is installed
              hnote page marlow.hnote --out visit.txt       five lines for a clinic to paste into its record
              hnote page marlow.hnote --for owner           the same facts, with what to do next
              hnote page marlow.hnote --for share --photo left-ear.jpg
                                                            no contacts, and only this picture
              hnote page pets                               a page for every note in the folder, and an index
            """,
        ["sheet"] = """
              hnote sheet marlow.hnote                      makes marlow-sheet.html: print it at 100 %
              hnote sheet marlow.hnote --format pdf --paper letter
              hnote sheet marlow.hnote --log                makes marlow-log.html: home care for seven days
              hnote sheet marlow.hnote --fill               makes marlow-fill.html: to fill in on a phone
            """,
        ["card"] = """
              hnote card                                    makes card.html, one page
              hnote card --out card.pdf --species cat --paper letter
            """,
        ["due"] = """
              hnote due marlow.hnote           what is due, overdue orders and visits first
              hnote due pets --days 30         of every note in a folder, what is overdue or due within 30 days
              hnote due pets --calendar pets.ics
                                               and a calendar file to import
            """,
        ["merge"] = """
              hnote merge marlow.hnote copy.hnote
                                               two versions of a note become one, by day
              hnote merge marlow.hnote         with every copy that file sync left beside it
              git config merge.hnote.driver "hnote merge %A %B --base %O"
                                               git joins notes so (.gitattributes: *.hnote merge=hnote)
            """,
        ["web"] = """
              hnote web                        write notes in this computer's browser; Ctrl-C ends it
              hnote web --out site             the files, for any web server that has https
            """,
        ["watch"] = """
              hnote watch marlow.hnote         keeps marlow.html up to date while you write
            """,
        ["format"] = """
              hnote format marlow.hnote           prints the formatted text
              hnote format --write pets/*.hnote   formats the files
              hnote format --check pets           lists the files that are not formatted
            """,
        ["new log"] = """
              hnote new log marlow.hnote       adds today's log: medicines, meals, water
            """,
        ["new visit"] = """
              hnote new visit marlow.hnote     adds a visit of today: your questions, then what was found and ordered
            """,
        ["values"] = """
              hnote values pets --json         one JSON object a note, each on a line
              hnote values marlow.hnote
              hnote values --json marlow.hnote
              hnote values --days marlow.hnote  each day of home care, added up
            """,
        ["export"] = """
              hnote export pets --format parquet --out shelf
                                               folders of Parquet, for DuckDB, Spark or Trino
              hnote export pets --format csv --out tables --pseudonyms @key.txt
                                               for research: no names, no text
              hnote export pets --table readings --out -
                                               one table on standard output, as NDJSON
              hnote export marlow.hnote --format fhir --out bundles
                                               one pet's notes for a record system: bundles/marlow.fhir.json
            """,
        ["import"] = """
              hnote import marlow.fhir.json    makes marlow.hnote; a note that is there is never replaced
            """,
        ["schema"] = """
              hnote schema export              the rows of hnote export --format ndjson
              hnote schema check               the JSON of hnote check --json
            """,
        ["about"] = """
              hnote about gum-colour
              hnote about                      lists the rules
            """,
        ["lsp"] = """
              hnote lsp                        what an editor's settings name as the command
              hnote lsp --log hnote.log        with a log, when something is wrong
            """,
        ["completion"] = """
              hnote completion bash >> ~/.bashrc
              hnote completion zsh >> ~/.zshrc
              hnote completion fish > ~/.config/fish/completions/hnote.fish
            """,
    };

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        int code = plain.Invoke(parseResult);
        if (Examples.TryGetValue(NameOf(parseResult.CommandResult.Command), out string? examples))
        {
            parseResult.InvocationConfiguration.Output.WriteLine($"Examples:{Environment.NewLine}{examples}");
        }

        return code;
    }

    /// <summary>What a command is called behind <c>hnote</c>, such as <c>new check</c>; <c>hnote</c> for the program itself.</summary>
    public static string NameOf(Command command) =>
        command is RootCommand ? "hnote" : string.Join(' ', command.Parents.OfType<Command>().Where(parent => parent is not RootCommand).Append(command).Select(part => part.Name));
}
