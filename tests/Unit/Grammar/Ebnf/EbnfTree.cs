namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>A piece of an EBNF rule (after ISO/IEC 14977).</summary>
public abstract record EbnfNode;

/// <summary><c>"hr"</c>: these characters.</summary>
public sealed record Literal(string Text) : EbnfNode;

/// <summary><c>rate</c>: another rule.</summary>
public sealed record Reference(string Rule) : EbnfNode;

/// <summary><c>? a state of the line's word ?</c>: said in words, resolved from the vocabulary.</summary>
public sealed record Special(string Text) : EbnfNode;

/// <summary><c>a, b</c>: one after the other.</summary>
public sealed record Sequence(IReadOnlyList<EbnfNode> Items) : EbnfNode;

/// <summary><c>a | b</c>: one of them.</summary>
public sealed record Choice(IReadOnlyList<EbnfNode> Alternatives) : EbnfNode;

/// <summary><c>[ a ]</c>: maybe.</summary>
public sealed record Maybe(EbnfNode Inner) : EbnfNode;

/// <summary><c>{ a }</c>: any number of times.</summary>
public sealed record Repeat(EbnfNode Inner) : EbnfNode;

/// <summary>All rules by name; the first one is the start.</summary>
public sealed record EbnfGrammar(string Start, IReadOnlyDictionary<string, EbnfNode> Rules)
{
    /// <summary>A rule's alternatives: one where it has no choice at its top.</summary>
    public IReadOnlyList<EbnfNode> Alternatives(string rule) => Rules[rule] is Choice choice ? choice.Alternatives : [Rules[rule]];

    /// <summary>A rule in capitals is made of characters: nothing stands between its pieces.</summary>
    public static bool IsOfCharacters(string rule) => char.IsAsciiLetterUpper(rule[0]);

    /// <summary>Everything in a piece, itself included.</summary>
    public static IEnumerable<EbnfNode> All(EbnfNode node) => (node switch
    {
        Sequence sequence => sequence.Items.SelectMany(All),
        Choice choice => choice.Alternatives.SelectMany(All),
        Maybe maybe => All(maybe.Inner),
        Repeat repeat => All(repeat.Inner),
        _ => [],
    }).Prepend(node);
}
