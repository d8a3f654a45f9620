using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Completion.Items;

/// <summary>What an offer is; editors show it as a small picture.</summary>
public enum CompletionKind
{
    /// <summary>A fact about the pet.</summary>
    Fact,

    /// <summary>A measured value's word.</summary>
    Vital,

    /// <summary>A part that is looked at and felt.</summary>
    Part,

    /// <summary>Something found on the body.</summary>
    Finding,

    /// <summary>Home care.</summary>
    Care,

    /// <summary>A question, something due, a picture, something left out.</summary>
    Task,

    /// <summary>A side or a place on the body.</summary>
    Site,

    /// <summary>A name that tells two findings in one place apart.</summary>
    Tag,

    /// <summary>A unit behind a number.</summary>
    Unit,

    /// <summary>A word of a small closed list: a species, a sex, a part of a meal, an interval.</summary>
    Value,

    /// <summary>A word that describes what was seen.</summary>
    Describing,

    /// <summary>How the animal was, where a value was taken, how a medicine went in.</summary>
    State,

    /// <summary>A medicine of this note.</summary>
    Medicine,

    /// <summary>A thing a size is compared with.</summary>
    Comparison,

    /// <summary>A day.</summary>
    Date,

    /// <summary>A word that joins: every, until, like, per, by.</summary>
    Joining,

    /// <summary>The head of an entry, or its kind.</summary>
    Entry,

    /// <summary>Several lines to fill in.</summary>
    Lines,
}

/// <summary>Something that may be written at a place.</summary>
/// <param name="Label">What the list shows.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Detail">A few words beside the label; may be empty.</param>
/// <param name="FilterText">What the typed part is matched with: it starts with what was typed, whichever spelling that was.</param>
/// <param name="SortKey">Offers are listed in the ordinal order of these.</param>
/// <param name="Edit">What is written, as plain text; its range is the typed word, never more than a part of one line.</param>
/// <param name="Snippet">The same text with numbered stops to fill in (<c>$1</c>), for editors that have them; else null.</param>
/// <param name="Key">What <see cref="CompletionFeature.Resolve"/> takes to explain the offer; null where there is no more to say.</param>
/// <param name="Preselect">True for the one that is clearly meant.</param>
public sealed record CompletionItem(
    string Label,
    CompletionKind Kind,
    string Detail,
    string FilterText,
    string SortKey,
    DocumentEdit Edit,
    string? Snippet = null,
    string? Key = null,
    bool Preselect = false);

/// <summary>What may be written at a place.</summary>
/// <param name="IsIncomplete">True when another character may bring offers that are not among these: the editor asks again.</param>
/// <param name="Items">The offers, in the order of their sort keys; at most <see cref="MostItems"/>.</param>
public sealed record CompletionList(bool IsIncomplete, ImmutableArray<CompletionItem> Items)
{
    /// <summary>The most offers that one list holds.</summary>
    public const int MostItems = 200;

    /// <summary>Nothing, and nothing to come.</summary>
    public static CompletionList Nothing { get; } = new(false, []);
}
