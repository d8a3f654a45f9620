using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>One thing that is looked for. A rule is a pure function of what has been read.</summary>
public interface IRule
{
    /// <summary>Its stable name; never reused for another rule.</summary>
    string Name { get; }

    /// <summary>
    /// What its findings are about. Of several findings with one topic in one line the strongest is kept: one cause gives
    /// one finding.
    /// </summary>
    string Topic { get; }
}

/// <summary>
/// A rule about one entry. Its findings may rest on the facts of the note and, through <see cref="EntryContext.Earlier"/>,
/// on what other entries say; nothing else, so that an edit elsewhere leaves them as they are.
/// </summary>
public interface IEntryRule : IRule
{
    /// <summary>What it finds in the entry, in any order.</summary>
    IEnumerable<NoteFinding> Find(EntryContext at);
}

/// <summary>A rule about the opening.</summary>
public interface IOpeningRule : IRule
{
    /// <summary>What it finds, in any order.</summary>
    IEnumerable<NoteFinding> Find(Note note, RuleContext context);
}
