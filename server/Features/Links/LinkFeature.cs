using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Links;

/// <summary>The files that photo lines name.</summary>
public static class LinkFeature
{
    /// <summary>The links of a note, in line order. A name that leads out of the note's folder is none.</summary>
    /// <param name="document">The note.</param>
    /// <param name="exists">Whether a file stands at a path from the note's folder.</param>
    public static ImmutableArray<NoteLink> In(Document document, Func<string, bool> exists) => [];

    /// <summary>The photo lines whose file is not there or cannot be looked for, in line order.</summary>
    /// <param name="document">The note.</param>
    /// <param name="exists">Whether a file stands at a path from the note's folder.</param>
    public static ImmutableArray<MissingPhoto> Missing(Document document, Func<string, bool> exists) => [];
}
