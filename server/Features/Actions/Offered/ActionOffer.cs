using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Actions.Offered;

/// <summary>What an action is for.</summary>
public enum ActionKind
{
    /// <summary>Fixes what a finding points at.</summary>
    QuickFix,

    /// <summary>Says the same in another way, or adds lines; nothing was wrong.</summary>
    Rewrite,

    /// <summary>Fixes everything in the note that can be fixed in one way only.</summary>
    FixAll,
}

/// <summary>A finding that an action does away with, by what tells it from the others.</summary>
/// <param name="Rule">The rule that found it.</param>
/// <param name="Line">The index of its line.</param>
/// <param name="Span">The characters it points at.</param>
public sealed record FixedFinding(string Rule, int Line, TextSpan Span);

/// <summary>A change that is offered to the writer. It is never made unasked.</summary>
/// <param name="Id">The name of the kind of action; stable, so that keys can be bound to it.</param>
/// <param name="Title">What the writer reads; it says what the text will be.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Edits">The changes, all to this document, none touching another; empty while <paramref name="Key"/> is given.</param>
/// <param name="IsPreferred">True where one keystroke may take it: there is no second way to fix this.</param>
/// <param name="Fixes">The findings it does away with; empty for a rewrite.</param>
/// <param name="Key">For what is dear to work out: what <see cref="ActionFeature.Resolve"/> takes; else null.</param>
public sealed record ActionOffer(
    string Id,
    string Title,
    ActionKind Kind,
    ImmutableArray<DocumentEdit> Edits,
    bool IsPreferred,
    ImmutableArray<FixedFinding> Fixes,
    string? Key = null);
