using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
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

    /// <summary>What <see cref="Unread"/> says of a file that is in none of the folders.</summary>
    public const string NotThere = "there is no such file";

    private const char Equal = '=';
    private static readonly string[] Words = ["clinic", "phone", "species", "call-if", "phone-now-if", "usual", "home-check", "med-range", "med-strength", "alias", "override-urgent", "include"];
    private static readonly string[] SetByPeople = ["call-if", "phone-now-if", "usual", "med-range", "med-strength", "override-urgent"];
    private static readonly string[] Names = ["clinic", "phone"];

    /// <summary>Why it could not be read; it has no lines then. Null for one that was read.</summary>
    public string? Unread { get; init; }

    /// <summary>True for a word that a line of such a file may start with.</summary>
    public static bool Takes(string word) => Words.Contains(word);

    /// <summary>The clinic's own spellings, each with the word that it stands for.</summary>
    public IEnumerable<(string Spelling, string Word)> Aliases => Lines.Opening.Facts.Select(fact => fact.Value).OfType<TextFact>().Where(fact => fact.Word.Word == "alias").Select(fact => Halves(fact.Text.Text));

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
        Note note = Note.Read(syntax, NoteVocabulary.Default, isRules: true);
        PlacedProblem[] problems =
        [
            .. note.Opening.Facts.Select(fact => (fact.Line, Message: Wrong(fact.Value))).Where(fact => fact.Message is not null)
                .Select(fact => new PlacedProblem(fact.Line, new Problem(ProblemRules.Misplaced, TextOf(syntax, fact.Line), fact.Message!))),
            .. note.Opening.Facts.Where(fact => fact.Value is TextFact { Word.Word: "alias" }).Select(fact => (fact.Line, Problem: WrongAlias(((TextFact)fact.Value).Text))).Where(alias => alias.Problem is not null)
                .Select(alias => new PlacedProblem(alias.Line, alias.Problem!)),
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
        : SetByPeople.Contains(item.Word.Word) && item.Body.First<Attribution>() is not { Who.Length: > 0, When: not null } ? "Who set it, and when? Write it behind the line, such as per vet 2026-01-20."
        : item is OverrideFact { Note: null } ? "Why? Write the reason behind the line, such as because this clinic measures in the ear."
        : null;

    private static (string Spelling, string Word) Halves(string alias) => alias.Split(Equal) is [var spelling, var word] ? (Blanks(spelling), Blanks(word)) : ("", "");

    private static string Blanks(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static Problem? WrongAlias(FreeWords alias)
    {
        (string spelling, string word) = Halves(alias.Text);
        if (spelling.Length == 0 || word.Length == 0)
        {
            return new Problem(ProblemRules.WrongValue, alias.Span, "Write the clinic's spelling, = and the known word, such as alias boiteux = lame.");
        }

        NoteVocabulary vocabulary = NoteVocabulary.Default;
        var left = new TextSpan(alias.Span.Start, alias.Text.AsSpan(0, alias.Text.IndexOf(Equal, StringComparison.Ordinal)).TrimEnd().Length);
        if (spelling.Any(c => !char.IsLetter(c) && c is not (' ' or '-' or '\'')))
        {
            return new Problem(ProblemRules.WrongValue, left, $"`{spelling}`: a spelling has letters, hyphens and blanks only.");
        }

        if (vocabulary.Knows(spelling) || vocabulary.CanStandFor(spelling) || vocabulary.Medicines.Find(spelling) is not null)
        {
            return new Problem(ProblemRules.WrongValue, left, $"`{spelling}` has a meaning already, and keeps it. Choose another spelling.");
        }

        string? nearest = vocabulary.CanStandFor(word) ? null : NearestWord.Find(word, vocabulary.Signs);
        string behind = alias.Text.Split(Equal)[1];
        return vocabulary.CanStandFor(word) ? null : new Problem(
            ProblemRules.UnknownWord, new TextSpan(alias.Span.End - behind.TrimStart().Length, behind.TrimStart().Length),
            $"`{word}` is not a part, a sign, a place or another word of a line" + (nearest is null ? "." : $". Did you mean `{nearest}`?"), nearest);
    }

    private static TextSpan TextOf(NoteSyntax syntax, int line) => syntax.Lines[line].Text is var text && text.TrimStart() is var start ? new TextSpan(text.Length - start.Length, start.TrimEnd().Length) : default;
}
