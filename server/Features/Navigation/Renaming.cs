using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Navigation;

/// <summary>Renames by writing each line anew and reading it again: what does not read as the same line with another name is refused.</summary>
internal static class Renaming
{
    /// <summary>The edits, or why not.</summary>
    public static RenameResult Of(Document document, RenamedPart part, string newName)
    {
        string name = newName.Trim();
        if (name.Length == 0 || name == "@" || name.Any(char.IsControl))
        {
            return RenameResult.Refused("A name is needed, in one line.");
        }

        if (part.Kind == NameKind.Tag && !name.StartsWith('@'))
        {
            name = "@" + name;
        }

        List<Mention> mentions = [.. Mentions.Of(part.Mention.Subject, document.Note).Where(mention => part.In(mention) is not null)];
        Note before = Alone(document, mentions.Select(mention => document.Syntax.Lines[mention.Line].Text));
        Note after = Alone(document, mentions.Select(mention => Renamed(document, mention, part.In(mention)!.Value, name)));
        if (after.Syntax.Lines.Length != before.Syntax.Lines.Length)
        {
            return RenameResult.Refused("A name is needed, in one line.");
        }

        ILookup<int, Problem> problems = after.Problems.ToLookup(problem => problem.Line, problem => problem.Problem);
        ILookup<int, Problem> known = before.Problems.ToLookup(problem => problem.Line, problem => problem.Problem);
        Subject? subject = null;
        int lead = before.Syntax.Lines.Length - mentions.Count;
        for (int index = 0; index < mentions.Count; index++)
        {
            int line = lead + index;
            if (problems[line].Count() > known[line].Count())
            {
                return RenameResult.Refused(Impossible(part.Kind, name, problems[line].First(problem => !known[line].Contains(problem)).Message));
            }

            Mention? renamed = Mention.In(after.Syntax.Lines[line], line);
            if (renamed is null
                || part.In(renamed) is not { } span || span.Length != name.Length
                || (subject is not null && renamed.Subject != subject)
                || !SameBesides(before.Syntax.Lines[line], after.Syntax.Lines[line]))
            {
                return RenameResult.Refused(Impossible(part.Kind, name, "it would be read as something else"));
            }

            subject = renamed.Subject;
        }

        return subject != part.Mention.Subject && subject is not null && Taken(document, part, subject) is { } taken
            ? RenameResult.Refused($"`{name}` is in use already (line {taken.Line + 1}); renamed, the two could not be told apart.")
            : RenameResult.Of(Edits(document, part, mentions, name));
    }

    /// <summary>A finding's name must be free. A medicine's may be in use, so that a misspelt dose can be put right, unless both are planned.</summary>
    private static Mention? Taken(Document document, RenamedPart part, Subject subject)
    {
        bool planned = part.Kind != NameKind.Medicine || Mentions.Of(part.Mention.Subject, document.Note).Any(mention => mention.Item is MedicinePlan);
        return planned ? Mentions.Of(subject, document.Note).FirstOrDefault(mention => part.Kind != NameKind.Medicine || mention.Item is MedicinePlan) : null;
    }

    /// <summary>The lines on their own, in a note of the same animal: which sites exist depends on it.</summary>
    private static Note Alone(Document document, IEnumerable<string> lines)
    {
        string species = document.Note.Opening.Species switch { Species.Dog => "species dog", Species.Cat => "species cat", _ => "" };
        return Note.Read(string.Join('\n', new[] { species, "2026-01-01 visit" }.Concat(lines)));
    }

    private static string Renamed(Document document, Mention mention, TextSpan span, string name)
    {
        string text = document.Syntax.Lines[mention.Line].Text;
        return string.Concat(text.AsSpan(0, span.Start), name, text.AsSpan(span.End));
    }

    private static bool SameBesides(LineSyntax before, LineSyntax after) =>
        before.Item?.GetType() == after.Item?.GetType() && before.Marks.Select(mark => mark.Kind).SequenceEqual(after.Marks.Select(mark => mark.Kind));

    private static string Impossible(NameKind kind, string name, string why) => kind switch
    {
        NameKind.Tag => $"`{name}` cannot be a tag, which is one word such as @lower: {why}.",
        NameKind.Site => $"`{name}` cannot be the site, which is a place such as L-flank: {why}.",
        _ => $"`{name}` cannot be the medicine's name here: {why}.",
    };

    private static ImmutableArray<DocumentEdit> Edits(Document document, RenamedPart part, List<Mention> mentions, string name) =>
    [
        .. from mention in mentions
           let span = part.In(mention)!.Value
           where !span.In(document.Syntax.Lines[mention.Line].Text).SequenceEqual(name)
           select new DocumentEdit(PlaceRange.Of(mention.Line, span), name),
    ];
}
