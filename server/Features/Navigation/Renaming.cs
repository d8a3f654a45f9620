using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
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

        // what names the same thing may stand in one line several times
        List<(int Line, List<TextSpan> Spans)> lines =
        [
            .. Mentions.Of(part.Mention.Subject, document.Note)
                .Select(mention => (mention.Line, Span: part.In(mention))).Where(name => name.Span is not null).Distinct()
                .GroupBy(name => name.Line).Select(line => (line.Key, line.Select(name => name.Span!.Value).OrderByDescending(span => span.Start).ToList())),
        ];
        Note before = Alone(document, lines.Select(line => document.Syntax.Lines[line.Line].Text));
        Note after = Alone(document, lines.Select(line => line.Spans.Aggregate(document.Syntax.Lines[line.Line].Text, (text, span) => string.Concat(text.AsSpan(0, span.Start), name, text.AsSpan(span.End)))));
        if (after.Syntax.Lines.Length != before.Syntax.Lines.Length)
        {
            return RenameResult.Refused("A name is needed, in one line.");
        }

        ILookup<int, Problem> problems = after.Problems.ToLookup(problem => problem.Line, problem => problem.Problem);
        ILookup<int, Problem> known = before.Problems.ToLookup(problem => problem.Line, problem => problem.Problem);
        Subject? subject = null;
        int lead = before.Syntax.Lines.Length - lines.Count;
        for (int index = 0; index < lines.Count; index++)
        {
            int line = lead + index;
            if (problems[line].Count() > known[line].Count())
            {
                return RenameResult.Refused(Impossible(part.Kind, name, problems[line].First(problem => !known[line].Contains(problem)).Message));
            }

            List<Mention> was = [.. Mention.In(before.Syntax.Lines[line], line)];
            List<Mention> now = [.. Mention.In(after.Syntax.Lines[line], line)];
            bool same = now.Count == was.Count && SameBesides(before.Syntax.Lines[line], after.Syntax.Lines[line]);
            foreach ((Mention old, Mention renamed) in same ? was.Zip(now).Where(pair => pair.First.Subject == part.Mention.Subject && part.In(pair.First) is not null) : [])
            {
                same &= part.In(renamed)?.Length == name.Length && (subject is null || renamed.Subject == subject);
                subject = renamed.Subject;
            }

            if (!same)
            {
                return RenameResult.Refused(Impossible(part.Kind, name, "it would be read as something else"));
            }
        }

        return subject != part.Mention.Subject && subject is not null && Taken(document, part, subject) is { } taken
            ? RenameResult.Refused($"`{name}` is in use already (line {taken.Line + 1}); renamed, the two could not be told apart.")
            : RenameResult.Of(Edits(document, lines, name));
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

    private static bool SameBesides(LineSyntax before, LineSyntax after) =>
        before.Items.Select(item => item.GetType()).SequenceEqual(after.Items.Select(item => item.GetType())) && before.Marks.Select(mark => mark.Kind).SequenceEqual(after.Marks.Select(mark => mark.Kind));

    private static string Impossible(NameKind kind, string name, string why) => kind switch
    {
        NameKind.Tag => $"`{name}` cannot be a tag, which is one word such as @lower: {why}.",
        NameKind.Site => $"`{name}` cannot be the site, which is a place such as L-flank: {why}.",
        _ => $"`{name}` cannot be the medicine's name here: {why}.",
    };

    private static ImmutableArray<DocumentEdit> Edits(Document document, List<(int Line, List<TextSpan> Spans)> lines, string name) =>
    [
        .. from line in lines
           from span in Enumerable.Reverse(line.Spans)
           where !span.In(document.Syntax.Lines[line.Line].Text).SequenceEqual(name)
           select new DocumentEdit(PlaceRange.Of(line.Line, span), name),
    ];
}
