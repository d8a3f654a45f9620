using System.CommandLine;
using System.Globalization;
using System.Text;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Rendering.Card;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote new [FILE]</c>: starts a note by asking, or from options.</summary>
internal static class NewCommand
{
    private static readonly Question[] Questions =
    [
        new("pet", "--name", "What is your pet called?", Needed: true),
        new("species", "--species", "Dog or cat?", Needed: true),
        new("breed", "--breed", "Breed or type?"),
        new("sex", "--sex", "Male or female, neutered or entire?"),
        new("born", "--born", "Born when? A day, a month, a year, or about (~2017)"),
        new("adult-weight", "--adult-weight", "Weight when grown, such as 27kg or 60lb?"),
        new("known", "--known", "Any condition your vet has named?"),
        new("clinic", "--clinic", "Your clinic?"),
        new("phone", "--phone", "The clinic's telephone number?"),
    ];

    public static Command Create()
    {
        var file = new Argument<string?>("file") { Description = "The file to start (the default is named after the pet)", Arity = ArgumentArity.ZeroOrOne };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("new", "Start a note: answer a few questions, or give the answers as options") { file };
        Dictionary<Question, Option<string?>> options = Questions.ToDictionary(q => q, q => new Option<string?>(q.Option) { Description = q.Text, HelpName = q.Word.ToUpperInvariant() });
        foreach (Option<string?> option in options.Values)
        {
            command.Options.Add(option);
        }

        command.Options.Add(today);
        foreach (Command entry in NewEntryCommand.All())
        {
            command.Subcommands.Add(entry);
        }

        command.SetAction(parsed => Run(
            parsed.GetValue(file), options.ToDictionary(pair => pair.Key, pair => parsed.GetValue(pair.Value)), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string? path, Dictionary<Question, string?> given, DateOnly today, TextWriter output)
    {
        bool ask = given.Values.All(value => value is null) && !Terminal.IsInputRedirected;
        var lines = new List<string>();
        string name = "";
        foreach (Question question in Questions)
        {
            string? line = ask ? Ask(question, output) : FromOption(question, given[question]);
            if (line is not null)
            {
                lines.Add(line);
                name = question.Word == "pet" ? line["pet ".Length..] : name;
            }
        }

        string target = path ?? FileNameFor(name);
        if (File.Exists(target) || Directory.Exists(target))
        {
            throw new RefusedException($"{target} is there already; name another file, or add an entry to it in your editor");
        }

        AtomicFile.Create(target, StarterNote.Write(lines, today), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        WriteAttributes(target);
        output.WriteLine($"Wrote {target}. Open it in any text editor, fill in what you see, then run: hnote check {target}");
        output.WriteLine();
        ShortCard(output);
        return ExitCodes.Fine;
    }

    /// <summary>In a folder under version control, says that notes are joined by day; a file of that name is left alone.</summary>
    private static void WriteAttributes(string note)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(note))!;
        string attributes = Path.Combine(folder, ".gitattributes");
        bool controlled = false;
        for (string? above = folder; above is not null && !controlled; above = Path.GetDirectoryName(above))
        {
            controlled = Path.Exists(Path.Combine(above, ".git"));
        }

        if (controlled && !File.Exists(attributes))
        {
            AtomicFile.Create(attributes, "*.hnote merge=hnote\n", new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        }
    }

    /// <summary>The most used lines of the card.</summary>
    private static void ShortCard(TextWriter output)
    {
        CardLine[] lines = [.. CardLine.All.Where(line => line.IsShort)];
        int width = lines.Max(line => line.Text.Length);
        output.WriteLine("The most used lines (all on one page to print: hnote card):");
        foreach (CardLine line in lines)
        {
            output.WriteLine($"  {line.Text.PadRight(width)}   {line.Meaning}");
        }
    }

    private static string? FromOption(Question question, string? answer)
    {
        if (string.IsNullOrWhiteSpace(answer))
        {
            return question.Needed ? throw new RefusedException($"{question.Option} is needed: {question.Text}") : null;
        }

        return ProblemIn(question, answer) is { } problem ? throw new RefusedException($"{question.Option}: {problem}") : Line(question, answer);
    }

    private static string? Ask(Question question, TextWriter output)
    {
        while (true)
        {
            output.Write(question.Text + (question.Needed ? " " : " (Enter to leave out) "));
            string? answer = Terminal.ReadLine();
            if (answer is null)
            {
                throw new RefusedException("the questions ended early; nothing was written");
            }

            if (answer.Trim().Length == 0)
            {
                if (!question.Needed)
                {
                    return null;
                }

                continue;
            }

            if (ProblemIn(question, answer) is not { } problem)
            {
                return Line(question, answer);
            }

            output.WriteLine("  " + problem);
        }
    }

    /// <summary>What the note itself would say about this line: the answer is read by the same parser.</summary>
    private static string? ProblemIn(Question question, string answer)
    {
        NoteSyntax syntax = NoteSyntax.Parse(Line(question, answer));
        return syntax.Lines.Length > 1 ? "an answer is one line" : syntax.Lines[0].Problems.FirstOrDefault()?.Message;
    }

    private static string Line(Question question, string answer) => $"{question.Word} {answer.Trim()}";

    private static string FileNameFor(string name)
    {
        string letters = string.Concat(name.ToLower(CultureInfo.InvariantCulture).Select(c => char.IsLetterOrDigit(c) ? c : '-')).Trim('-');
        return (letters.Length == 0 ? "pet" : letters) + ".hnote";
    }

    private sealed record Question(string Word, string Option, string Text, bool Needed = false);
}
