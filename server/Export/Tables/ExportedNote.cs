using HealthNotes.Analysis;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Export.Tables;

/// <summary>A note as it is exported.</summary>
/// <param name="Analysis">What is known of it.</param>
/// <param name="File">Its path below the folder that was named, with <c>/</c> between its parts.</param>
/// <param name="WithText">True to export the owner's own words, too.</param>
/// <param name="Pseudonyms">Replaces names; null to keep them.</param>
public sealed record ExportedNote(NoteAnalysis Analysis, string File, bool WithText = false, Pseudonyms? Pseudonyms = null)
{
    private static readonly ILookup<string, string> OpenWords = TsvTable.Load(typeof(ExportedNote).Assembly, "open-words.tsv").Rows
        .SelectMany(row => row["words"].Split('|').Select(word => (Column: row["column"], Word: word))).ToLookup(open => open.Column, open => open.Word);

    /// <summary>The same for every version of the note: worked out from the chip, else from the file's path.</summary>
    public string PetId { get; } = (Pseudonyms ?? Pseudonyms.None).Of(
        Analysis.Note.Opening.Text("chip") is { } chip ? "chip " + chip : "file " + File);

    internal object? Shown(Column column, object? value) => value is not string text || Pseudonyms is not { } hide ? value : column.Privacy switch
    {
        Privacy.Name => hide.Of(text),
        Privacy.Known => Known(column.Name, text) ?? hide.Of(text.ToLowerInvariant()),
        Privacy.Words => null,
        _ => text,
    };

    private static string? Known(string column, string text) => NoteVocabulary.Default.Medicines.Find(text)?.Word
        ?? (NoteVocabulary.Default.CanStandFor(text) || Words(text).All(word => OpenWords[column].Contains(word, StringComparer.OrdinalIgnoreCase)) ? text : null);

    private static string[] Words(string text) => text.Split([.. text.Where(c => !char.IsLetterOrDigit(c) && !char.IsSurrogate(c))], StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>A row and where it stands.</summary>
/// <param name="Line">The index of its line (from 0).</param>
/// <param name="In">The head of its entry; null in the opening.</param>
/// <param name="Time">The time of the line, else of its entry.</param>
/// <param name="Of">What the row is about.</param>
internal sealed record Row<T>(int Line, EntryHead? In, TimeOnly? Time, T Of);
