using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Files;

/// <summary>
/// Finds the clinic's rules that lie over a note: files whose names end in <c>.hnote-rules</c>, in the note's folder and those
/// above it, up to the user's home. The nearest come first; in one folder those for one animal come before those for all.
/// What was found in a folder is kept, so that the notes of a folder are read with one look at it.
/// </summary>
public sealed class RulesFiles
{
    private const int MostFolders = 16;
    private const int MostFiles = 16;
    private const long MostBytes = 256 * 1024;
    private readonly ConcurrentDictionary<string, ImmutableArray<ClinicRules>> folders = new(StringComparer.Ordinal);

    /// <summary>All that were found so far.</summary>
    public IEnumerable<ClinicRules> Found => folders.OrderBy(folder => folder.Key, StringComparer.Ordinal).SelectMany(folder => folder.Value);

    /// <summary>True for the name of such a file.</summary>
    public static bool IsRules(string path) => path.EndsWith(ClinicRules.Ending, StringComparison.Ordinal);

    /// <summary>The note, or rules, of a file with this text, with the rules that lie over it.</summary>
    /// <param name="path">The file; null for a text that is in none.</param>
    /// <param name="text">Its text.</param>
    public Note Read(string? path, string text) => path is null ? Note.Read(text)
        : IsRules(path) ? ClinicRules.Read(path, text).Lines
        : Note.Read(text) with { Clinic = Over(path) };

    /// <summary>The rules over a note, the nearest first.</summary>
    public ImmutableArray<ClinicRules> Over(string note)
    {
        try
        {
            string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
            string? folder = Path.GetDirectoryName(Path.GetFullPath(note));
            ImmutableArray<ClinicRules> all = [];
            for (int up = 0; up < MostFolders && folder is not null && Path.GetDirectoryName(folder) is { } parent; up++)
            {
                all = all.AddRange(folders.GetOrAdd(folder, In));
                folder = folder == home ? null : parent;
            }

            return all;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return [];
        }
    }

    private static ImmutableArray<ClinicRules> In(string folder)
    {
        try
        {
            return
            [
                .. Directory.EnumerateFiles(folder, "*" + ClinicRules.Ending, new EnumerationOptions { AttributesToSkip = FileAttributes.System, IgnoreInaccessible = true })
                    .Where(file => new FileInfo(file).LinkTarget is null).Order(StringComparer.Ordinal).Take(MostFiles)
                    .Select(file => ClinicRules.Read(Path.GetFileName(file), Encoding.UTF8.GetString(RealFile.Read(file, MostBytes))))
                    .OrderBy(rules => rules.Lines.Opening.Species == Species.Unknown),
            ];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or RefusedException)
        {
            return [];
        }
    }
}
