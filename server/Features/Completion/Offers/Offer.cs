using HealthNotes.Features.Completion.Items;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Something that may be written, before it is compared with what is typed.</summary>
/// <param name="Text">What is written.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Group">Lower groups come first; within one, the order in which they are given.</param>
/// <param name="Detail">A few words beside it.</param>
internal sealed record Offer(string Text, CompletionKind Kind, int Group, string Detail = "")
{
    /// <summary>What the list shows, where it is not the text.</summary>
    public string? Label { get; init; }

    /// <summary>Other spellings by which it is found.</summary>
    public IReadOnlyList<string> Spellings { get; init; } = [];

    /// <summary>The key of its explanation.</summary>
    public string? Key { get; init; }

    /// <summary>The text with numbered stops.</summary>
    public string? Snippet { get; init; }

    /// <summary>True for the one that is clearly meant.</summary>
    public bool Preselect { get; init; }

    /// <summary>Where the replaced text starts, when it is not where the word starts.</summary>
    public int? From { get; init; }

    /// <summary>True for what comes below all that fits.</summary>
    public bool Below { get; init; }

    /// <summary>True for what is offered only once its start is typed.</summary>
    public bool WhenTyped { get; init; }
}
