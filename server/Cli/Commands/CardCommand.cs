using System.CommandLine;
using System.Text;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Card;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote card</c></summary>
internal static class CardCommand
{
    private const string Name = "card";

    public static Command Create()
    {
        var target = new Option<string?>("--out", "-o") { Description = $"Where to write the card: a name that ends in .html or .pdf; - prints it (the default is {Name}.html)", HelpName = "FILE" };
        var species = new Option<string?>("--species") { Description = "dog or cat: lists that animal's emergencies (the default lists both)", HelpName = "SPECIES" };
        species.AcceptOnlyFromAmong("dog", "cat");
        Option<Paper> paper = SharedOptions.OnPaper();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<bool> force = SharedOptions.Force();
        var command = new Command(Name, "Make a one-page card: what to type, how to say no, gone or missed, and when to phone") { target, species, paper, force, today };
        command.SetAction(parsed => Run(
            parsed.GetValue(target),
            parsed.GetValue(force),
            parsed.GetValue(species) switch { "dog" => Species.Dog, "cat" => Species.Cat, _ => Species.Unknown },
            parsed.GetValue(paper),
            parsed.DayOf(today),
            parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string? target, bool force, Species species, Paper paper, DateOnly today, TextWriter output)
    {
        string card = NoteCard.Html(species, paper);
        bool pdf = Path.GetExtension(target ?? "").Equals(".pdf", StringComparison.OrdinalIgnoreCase);
        Destination.Of(Name, target, ".html", force).Write(pdf ? PdfPrinter.Print(card, today) : Encoding.UTF8.GetBytes(card), output, $"one page of {paper}");
        return ExitCodes.Fine;
    }
}
