using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Lumps;

/// <summary>The describing words of a line about a lump, a wound or a node.</summary>
internal static class LumpWords
{
    /// <summary>The words, in their order.</summary>
    public static ImmutableArray<Described> Of(NoteItem? item) => item switch
    {
        Finding finding => finding.Words,
        Examined examined => examined.Words,
        _ => [],
    };

    /// <summary>True when the line has the word, in its one spelling.</summary>
    public static bool Has(NoteItem? item, string word)
    {
        foreach (Described described in Of(item))
        {
            if (described.Word.Word == word)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The word by which a line says that it is there no more; null when it does not.</summary>
    public static string? End(NoteItem? item)
    {
        foreach (Described described in Of(item))
        {
            if (described.Word.Word is "gone" or "removed" or "resolved" or "healed")
            {
                return described.Word.Word;
            }
        }

        return null;
    }
}
