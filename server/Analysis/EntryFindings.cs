using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record;

namespace HealthNotes.Analysis;

/// <summary>What was found in one entry. Kept while the entry, the facts and what was asked of the record stay as they are, in whichever lines they stand.</summary>
/// <param name="findings">What was found in it.</param>
/// <param name="asked">What was asked of the record.</param>
/// <param name="askedIn">The line in which the entry stood then.</param>
internal sealed class EntryFindings(ImmutableArray<NoteFinding> findings, Watch asked, int askedIn)
{
    /// <summary>What was found in it.</summary>
    public ImmutableArray<NoteFinding> Findings => findings;

    /// <summary>What could not be read of it.</summary>
    public ImmutableArray<NoteFinding> Errors { get; } = findings.RemoveAll(finding => finding.Level != FindingLevel.Error);

    private readonly bool namesLines = findings.Any(finding => finding.Evidence.Length > 1 || finding.Message.Contains($"line {finding.Line + 1}", StringComparison.Ordinal));

    /// <summary>Applies the rules.</summary>
    public static EntryFindings Of(PetRecord record, PetEntry entry)
    {
        var asked = new Watch();
        return new EntryFindings(RuleBook.FindIn(record.For(asked), entry), asked, entry.Entry.Line);
    }

    /// <summary>The same for another version of the note; null when the rules have to be applied again.</summary>
    /// <param name="now">The record of that version.</param>
    /// <param name="was">The entry as it was.</param>
    /// <param name="entry">The entry as it is.</param>
    /// <param name="factsMoved">True when facts stand in other lines than before.</param>
    /// <param name="changed">The first day of which anything else is written than before.</param>
    public EntryFindings? For(PetRecord now, PetEntry was, PetEntry entry, bool factsMoved, DateOnly changed)
    {
        bool isThere = ReferenceEquals(was, entry);
        if (isThere && asked.Until < changed && !(factsMoved && namesLines))
        {
            return this;
        }

        // a weight that does not go with the others names the line of another
        if ((factsMoved && namesLines)
            || !(isThere || (was.Slips.IsEmpty && entry.Slips.IsEmpty))
            || !asked.Holds(now, entry.Entry.Line - askedIn, inPlace: namesLines))
        {
            return null;
        }

        int by = entry.Entry.Line - was.Entry.Line;
        return by == 0 || findings.IsEmpty ? this : new EntryFindings([.. findings.Select(Moved)], asked, askedIn);

        NoteFinding Moved(NoteFinding finding) => finding with
        {
            Line = finding.Line + by,
            Evidence = [.. finding.Evidence.Select(line => IsOwn(line) ? line + by : line).Order()],
        };

        // what it rests on outside the entry has not moved
        bool IsOwn(int line) => line >= was.Entry.Line && ReferenceEquals(now.Note.EntryAt(line + by), entry.Entry);
    }
}
