using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>The facts of a note wherever they stand, with their lines: what findings of any entry may rest on.</summary>
internal sealed class FactSet
{
    private readonly ImmutableArray<(int Line, Entry? In, NoteItem Item)> facts;

    private FactSet(ImmutableArray<(int Line, Entry? In, NoteItem Item)> facts) => this.facts = facts;

    /// <summary>Collects them.</summary>
    public static FactSet Of(Note note)
    {
        ImmutableArray<(int Line, Entry? In, NoteItem Item)>.Builder facts = ImmutableArray.CreateBuilder<(int, Entry?, NoteItem)>();
        facts.AddRange(note.Opening.Facts.Select(fact => (fact.Line, (Entry?)null, fact.Value)));
        foreach (Entry entry in note.Entries)
        {
            foreach (Placed<NoteItem> fact in entry.Facts)
            {
                facts.Add((fact.Line, entry, fact.Value));
            }
        }

        return new FactSet(facts.DrainToImmutable());
    }

    /// <summary>True when the very same lines stand in the same entries.</summary>
    /// <param name="other">The facts of another version.</param>
    /// <param name="moved">True when some of them stand further up or down: findings that name their lines have to say so.</param>
    public bool SameAs(FactSet other, out bool moved)
    {
        moved = false;
        if (facts.Length != other.facts.Length)
        {
            return false;
        }

        for (int index = 0; index < facts.Length; index++)
        {
            (int line, Entry? entry, NoteItem item) = facts[index];
            (int otherLine, Entry? otherEntry, NoteItem otherItem) = other.facts[index];
            if (!ReferenceEquals(item, otherItem) || entry?.Head != otherEntry?.Head)
            {
                return false;
            }

            moved |= line != otherLine;
        }

        return true;
    }
}
