using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Notes;

/// <summary>
/// What a clinic sets for several pets: lines as in the opening of a note, in a file of their own. A line of the note itself comes
/// first. A line <c>species cat</c> limits the whole file to cats.
/// </summary>
/// <param name="Name">The name of the file, as it is shown.</param>
/// <param name="Lines">Its lines.</param>
public sealed record ClinicRules(string Name, Note Lines)
{
    /// <summary>How the name of such a file ends.</summary>
    public const string Ending = ".hnote-rules";

    private static readonly string[] Words = ["clinic", "phone", "species", "call-if", "usual", "home-check"];
    private static readonly string[] SetByPeople = ["call-if", "usual"];
    private static readonly string[] Names = ["clinic", "phone"];

    /// <summary>Reads a file. Never fails: what cannot stand in it is reported in <see cref="Note.Problems"/> and holds for no note.</summary>
    public static ClinicRules Read(string name, string text) => new(name, Read(NoteSyntax.Parse(text)));

    /// <summary>True when it holds for such an animal.</summary>
    public bool HoldsFor(Species species) => Lines.Opening.Species == Species.Unknown || Lines.Opening.Species == species;

    /// <summary>The same without what names the clinic or a person.</summary>
    public ClinicRules Unnamed() => new("the clinic's rules", Lines with
    {
        Opening = Lines.Opening with
        {
            Facts = [.. Lines.Opening.Facts.Where(fact => !Names.Contains(fact.Value.Word.Word)).Select(fact => fact with { Value = fact.Value with { Body = new ItemBody(fact.Value.Body.Filled.RemoveAll(slot => slot.Value is Attribution)) } })],
        },
    });

    internal static Note Read(NoteSyntax syntax)
    {
        Note note = Note.Read(syntax, NoteVocabulary.Default);
        PlacedProblem[] problems =
        [
            .. note.Opening.Facts.Select(fact => (fact.Line, Message: Wrong(fact.Value))).Where(fact => fact.Message is not null)
                .Select(fact => new PlacedProblem(fact.Line, new Problem(ProblemRules.Misplaced, TextOf(syntax, fact.Line), fact.Message!))),
            .. note.Entries.Select(entry => new PlacedProblem(entry.Line, new Problem(ProblemRules.Misplaced, TextOf(syntax, entry.Line), "A clinic's rules hold no entries. Write what was seen into the note of the pet."))),
        ];
        HashSet<int> wrong = [.. problems.Select(problem => problem.Line)];
        return note with
        {
            IsRules = true,
            Entries = [],
            Opening = note.Opening with
            {
                Facts = note.Opening.Facts.RemoveAll(fact => wrong.Contains(fact.Line)),
                Problems = [.. note.Opening.Problems.Where(problem => !wrong.Contains(problem.Line)).Concat(problems).OrderBy(problem => problem.Line)],
            },
        };
    }

    private static string? Wrong(NoteItem item) => !Words.Contains(item.Word.Word) ? $"`{item.Word.Word}` is about one pet. A clinic's rules hold {string.Join(", ", Words)}."
        : SetByPeople.Contains(item.Word.Word) && item.Body.First<Attribution>() is null ? "Who set it, and when? Write it behind the line, such as per vet 2026-01-20."
        : null;

    private static TextSpan TextOf(NoteSyntax syntax, int line) => syntax.Lines[line].Text is var text && text.TrimStart() is var start ? new TextSpan(text.Length - start.Length, start.TrimEnd().Length) : default;
}
