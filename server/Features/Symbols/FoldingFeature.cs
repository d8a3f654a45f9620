using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Symbols;

/// <summary>Lines that can be folded into the first of them.</summary>
/// <param name="FirstLine">The line that stays.</param>
/// <param name="LastLine">The last line that is hidden; after <paramref name="FirstLine"/>.</param>
/// <param name="IsComment">True for a run of comments.</param>
public sealed record FoldedLines(int FirstLine, int LastLine, bool IsComment);

/// <summary>What can be folded.</summary>
public static class FoldingFeature
{
    /// <summary>The opening, the entries, runs of comments, blocks of free text: nested or apart, by first line.</summary>
    public static ImmutableArray<FoldedLines> In(Document document) => [];
}
