using HealthNotes.Analysis.Findings;

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

    /// <summary>What it finds, in any order.</summary>
    IEnumerable<NoteFinding> Find(RuleContext context);
}
