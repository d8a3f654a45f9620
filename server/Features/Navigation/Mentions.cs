using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Navigation;

/// <summary>Finds every line of a note that names a subject.</summary>
internal static class Mentions
{
    /// <summary>The mentions of a subject, in line order.</summary>
    public static IEnumerable<Mention> Of(Subject subject, Note note)
    {
        foreach (Placed<NoteItem> item in note.Opening.Facts)
        {
            if (subject.IsNamedBy(item.Value))
            {
                yield return Mention.Of(note.Syntax.Lines[item.Line], item.Value, item.Line)!;
            }
        }

        foreach (Entry entry in note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (subject.IsNamedBy(item.Value))
                {
                    yield return Mention.Of(note.Syntax.Lines[item.Line], item.Value, item.Line)!;
                }
            }
        }
    }

    /// <summary>
    /// The mention that introduces a subject for a reader at <paramref name="line"/>: the first line that notes a finding; the
    /// nearest plan above for a medicine, since a plan is changed by writing another, else its first plan.
    /// </summary>
    public static Mention? Definition(Subject subject, IEnumerable<Mention> mentions, int line)
    {
        Mention? first = null;
        Mention? found = null;
        foreach (Mention mention in mentions)
        {
            first ??= mention;
            if (subject.IsNotedBy(mention.Item))
            {
                if (subject is BodySubject)
                {
                    return mention;
                }

                if (found is null || mention.Line <= line)
                {
                    found = mention;
                }
            }
        }

        return found ?? (subject is BodySubject ? first : null);
    }
}
