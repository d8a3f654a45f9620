using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Text;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Rules;

/// <summary>What a rule's findings have in common.</summary>
/// <param name="Name">Its stable name; never reused for another rule.</param>
/// <param name="Topic">
/// What its findings are about. Of several findings with one topic about one observation the strongest is kept: one cause gives
/// one finding.
/// </param>
/// <param name="Priority">Of rules with one topic whose findings are equally strong, the one with the lowest number speaks.</param>
public sealed record RuleKind(string Name, string Topic, int Priority);

/// <summary>One thing that is looked for. A rule is a pure function of the record.</summary>
public interface IRule
{
    /// <summary>Its name, its topic and its priority.</summary>
    RuleKind Kind { get; }

    /// <summary>Its stable name.</summary>
    string Name => Kind.Name;
}

/// <summary>
/// A rule about one entry. Its findings may rest on the facts of the note and on what it asks the record; on no other line, so
/// that an edit elsewhere leaves them as they are.
/// </summary>
public interface IEntryRule : IRule
{
    /// <summary>What it finds in the entry, in any order.</summary>
    IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry);
}

/// <summary>A rule about the opening.</summary>
public interface IOpeningRule : IRule
{
    /// <summary>What it finds, in any order.</summary>
    IEnumerable<NoteFinding> Find(PetRecord at);
}

/// <summary>Makes the findings of a rule.</summary>
internal static class RuleFindings
{
    /// <summary>A finding at one line, resting on it and on <paramref name="evidence"/>. It advises what its level asks of the reader.</summary>
    public static NoteFinding At(this IRule rule, FindingLevel level, int line, TextSpan span, string found, string source, params IEnumerable<int> evidence) =>
        new(rule.Name, level, line, span, found.TrimEnd(), source, [.. evidence.Where(other => other >= 0).Append(line).Distinct().Order()])
        {
            Advice = Wording.Advice(level),
            Topic = rule.Kind.Topic,
            Priority = rule.Kind.Priority,
        };
}
