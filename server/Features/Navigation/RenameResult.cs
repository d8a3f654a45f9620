using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Navigation;

/// <summary>Either the edits that rename something, or why it cannot be done.</summary>
/// <param name="Edits">One edit a line; empty when it is refused.</param>
/// <param name="Refusal">Why not, in plain words; null when it can be done.</param>
public sealed record RenameResult(ImmutableArray<DocumentEdit> Edits, string? Refusal)
{
    /// <summary>It can be done.</summary>
    public static RenameResult Of(ImmutableArray<DocumentEdit> edits) => new(edits, null);

    /// <summary>It cannot be done.</summary>
    public static RenameResult Refused(string why) => new([], why);
}
