using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Files;

/// <summary>
/// Finds the clinic's rules that lie over a note: first the files that its <c>include</c> lines name, then those whose names end in
/// <c>.hnote-rules</c> in the note's folder and those above it, up to the user's home. The nearest come first; in one folder those for
/// one animal come before those for all. A file is read once, so that the notes of a folder are read with one look at it.
/// </summary>
public sealed class RulesFiles
{
    private const int MostFolders = 16;
    private const int MostFiles = 16;
    private const long MostBytes = 256 * 1024;
    private static readonly string TooMany = $"there are more than {MostFiles} in one place";
    private readonly ConcurrentDictionary<string, ImmutableArray<string>> folders = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, ClinicRules> files = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, NoteVocabulary> vocabularies = new(StringComparer.Ordinal);

    /// <summary>What of the files found so far could not be read and holds for no note: the file, and a sentence that says what.</summary>
    public IEnumerable<(string File, string Message)> Wrong =>
        from file in files.OrderBy(file => file.Key, StringComparer.Ordinal)
        from message in file.Value.Unread is { } why ? [$"{file.Value.Name}: {why}. No line of it holds for a note."]
            : Over(file.Key, file.Value.Lines).Problems.Select(wrong => $"{file.Value.Name}, line {wrong.Line + 1}: {wrong.Problem.Message} The line holds for no note.")
        select (file.Key, message);

    /// <summary>True for the name of such a file.</summary>
    public static bool IsRules(string path) => path.EndsWith(ClinicRules.Ending, StringComparison.Ordinal);

    /// <summary>The note, or rules, of a file with this text, with the rules that lie over it.</summary>
    /// <param name="path">The file; null for a text that is in none.</param>
    /// <param name="text">Its text.</param>
    public Note Read(string? path, string text) => Over(path, path is not null && IsRules(path) ? ClinicRules.Read(path, text).Lines : Note.Read(text));

    /// <summary>A note, or rules, under the rules that lie over its file; over rules lie only the files that they include.</summary>
    /// <param name="path">Its file; null where it is in none.</param>
    /// <param name="note">The note.</param>
    public Note Over(string? path, Note note)
    {
        if (path is null)
        {
            return note;
        }

        ImmutableArray<ClinicRules> rules = [];
        try
        {
            string[] above = [.. Above(Path.GetFullPath(path))];
            var seen = new HashSet<string>(StringComparer.Ordinal) { Path.GetFullPath(path) };
            ImmutableArray<ClinicRules>.Builder all = ImmutableArray.CreateBuilder<ClinicRules>();
            Include(note, above, seen, all);
            foreach (string file in note.IsRules ? [] : above.SelectMany(folder => folders.GetOrAdd(folder, In)))
            {
                Add(file, seen, all);
            }

            rules = all.DrainToImmutable();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            // a path that the system refuses has no rules
        }

        (string Spelling, string Word)[] aliases = note.IsRules ? [] : [.. rules.Where(some => some.HoldsFor(note.Opening.Species)).SelectMany(some => some.Aliases)];
        return note.Under(rules, aliases.Length == 0 ? NoteVocabulary.Default : vocabularies.GetOrAdd(string.Join('\n', aliases), _ => NoteVocabulary.Default.With(aliases)));
    }

    /// <summary>The text of all rules over a note; null where its own lines may add some.</summary>
    /// <param name="path">Its file; null or a dash where it is in none.</param>
    /// <param name="text">Its text.</param>
    public string? TextOver(string? path, string text) => path is null or "-" || IsRules(path) || text.Contains("include", StringComparison.OrdinalIgnoreCase) ? null
        : string.Join('\0', Over(path, Note.Read("")).Clinic.Select(rules => $"{rules.Name}\0{rules.Lines.Syntax.Print()}"));

    private static IEnumerable<string> Above(string path)
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        string? folder = Path.GetDirectoryName(path);
        for (int up = 0; up < MostFolders && folder is not null && Path.GetDirectoryName(folder) is { } parent; up++)
        {
            yield return folder;
            folder = folder == home ? null : parent;
        }
    }

    /// <summary>The files that the lines of a note or of rules include. Each is taken once, so that no circle goes on.</summary>
    private void Include(Note note, IReadOnlyList<string> above, HashSet<string> seen, ImmutableArray<ClinicRules>.Builder all)
    {
        foreach ((int place, string name) in note.Included.Take(MostFiles + 1).Index())
        {
            string? file = above.Select(folder => Inside(folder, name)).FirstOrDefault(File.Exists);
            if ((place == MostFiles ? TooMany : file is null ? ClinicRules.NotThere : Rules(file).Unread) is { } why)
            {
                all.Add(Unread(name, why));
            }
            else
            {
                Add(file!, seen, all);
            }
        }
    }

    private void Add(string file, HashSet<string> seen, ImmutableArray<ClinicRules>.Builder all)
    {
        if (all.Count < MostFolders * MostFiles && seen.Add(file) && Rules(file) is { Unread: null } rules)
        {
            all.Add(rules);
            Include(rules.Lines, [.. Above(file)], seen, all);
        }
    }

    /// <summary>The file of a name below a folder; null for a name that leads out of it, or through a link.</summary>
    private static string? Inside(string folder, string name)
    {
        string[] parts = name.Replace('\\', '/').Split('/');
        if (parts.Any(part => part is "" or "." or ".." || part.AsSpan().ContainsAny(Path.GetInvalidFileNameChars())) || Path.IsPathRooted(name))
        {
            return null;
        }

        string at = folder;
        foreach (string part in IsRules(name) ? parts : [.. parts[..^1], parts[^1] + ClinicRules.Ending])
        {
            at = Path.Combine(at, part);
            if (new FileInfo(at).LinkTarget is not null)
            {
                return null;
            }
        }

        return at;
    }

    private static ClinicRules Unread(string name, string why) => ClinicRules.Read(name, "") with { Unread = why };

    private ClinicRules Rules(string path) => files.GetOrAdd(path, static file =>
    {
        try
        {
            return new FileInfo(file).LinkTarget is not null ? Unread(Path.GetFileName(file), "it is a link, and a link is not followed")
                : ClinicRules.Read(Path.GetFileName(file), Encoding.UTF8.GetString(RealFile.Read(file, MostBytes)));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or RefusedException)
        {
            return Unread(Path.GetFileName(file), problem is RefusedException ? problem.Message : "the system refused it");
        }
    });

    private ImmutableArray<string> In(string folder)
    {
        try
        {
            string[] all = [.. Directory.EnumerateFiles(folder, "*" + ClinicRules.Ending, new EnumerationOptions { AttributesToSkip = FileAttributes.System, IgnoreInaccessible = true }).Order(StringComparer.Ordinal)];
            foreach (string next in all.Skip(MostFiles).Take(1))
            {
                files.TryAdd(next, Unread(Path.GetFileName(next), $"{TooMany}; this one and those after it are not read"));
            }

            return [.. all.Take(MostFiles).OrderBy(file => Rules(file) is not { Lines.Opening.Species: not Species.Unknown })];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
