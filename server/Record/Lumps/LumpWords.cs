using HealthNotes.Grammar.Items;

namespace HealthNotes.Record.Lumps;

/// <summary>The describing words of a line about a lump, a wound or a node.</summary>
public static class LumpWords
{
    /// <summary>A place that the pet did not mind being touched.</summary>
    public const string NoReaction = "no-reaction";

    /// <summary>True when the line has the word, in its one spelling.</summary>
    public static bool Has(NoteItem? item, string word)
    {
        foreach (Described described in item?.Words ?? [])
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
        if (item is NotSeen)
        {
            return "gone";
        }

        foreach (Described described in item?.Words ?? [])
        {
            if (described.Word.Word is "gone" or "removed" or "resolved" or "healed")
            {
                return described.Word.Word;
            }
        }

        return null;
    }
}
