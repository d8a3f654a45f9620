using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record;

namespace HealthNotes.Analysis;

/// <summary>What was found in one entry. Kept while the entry, the facts and what was asked of the record stay as they are.</summary>
internal sealed class EntryFindings(ImmutableArray<NoteFinding> findings, Watch asked)
{
    /// <summary>What was found in it.</summary>
    public ImmutableArray<NoteFinding> Findings => findings;

    /// <summary>What could not be read of it.</summary>
    public ImmutableArray<NoteFinding> Errors { get; } = findings.RemoveAll(finding => finding.Level != FindingLevel.Error);

    /// <summary>Applies the rules.</summary>
    public static EntryFindings Of(PetRecord record, PetEntry entry)
    {
        var asked = new Watch();
        return new EntryFindings(RuleBook.FindIn(record.For(asked), entry), asked);
    }

    /// <summary>The same for another version of the note; null when the rules have to be applied again.</summary>
    /// <param name="now">The record of that version.</param>
    /// <param name="was">The entry as it was.</param>
    /// <param name="entry">The entry as it is.</param>
    /// <param name="factsMoved">True when facts stand in other lines than before.</param>
    public EntryFindings? For(PetRecord now, PetEntry was, PetEntry entry, bool factsMoved)
    {
        if (factsMoved && findings.Any(finding => finding.Evidence.Length > 1))
        {
            return null;
        }

        if (ReferenceEquals(was, entry))
        {
            return asked.IsEmpty || asked.Holds(now) ? this : null;
        }

        // a weight that does not go with the others, and answers to questions, name other lines
        int by = entry.Entry.Line - was.Entry.Line;
        return !asked.IsEmpty || !was.Slips.IsEmpty || !entry.Slips.IsEmpty ? null
            : findings.IsEmpty ? this
            : new EntryFindings([.. findings.Select(finding => Moved(finding, by))], asked);
    }

    /// <summary>What it rests on outside its own line is facts, and those have not moved.</summary>
    private static NoteFinding Moved(NoteFinding finding, int by) => finding with
    {
        Line = finding.Line + by,
        Evidence = finding.Evidence.Length == 1 ? [finding.Line + by] : [.. finding.Evidence.Select(line => line == finding.Line ? line + by : line).Order()],
    };
}
