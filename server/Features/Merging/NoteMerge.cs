using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;

namespace HealthNotes.Features.Merging;

/// <summary>A note made of two versions.</summary>
/// <param name="Text">Every line of both, but for those that one of them took out.</param>
/// <param name="ChangedTwice">Lines that both changed, each in its own way: both ways are in the text, one below the other.</param>
public sealed record MergedNote(string Text, ImmutableArray<string> ChangedTwice);

/// <summary>
/// Joins two versions of a note by entry: an entry of the same day, time and kind is one entry, and lines that either side added are in it.
/// A line is lost only where one side took it out and the other left it as it was.
/// </summary>
public static class NoteMerge
{
    /// <summary>Joins two versions.</summary>
    /// <param name="before">What both come from; null where that is not known.</param>
    /// <param name="ours">The version whose order and line breaks are kept.</param>
    /// <param name="theirs">The other.</param>
    public static MergedNote Of(string? before, string ours, string theirs)
    {
        bool crlf = ours.Contains("\r\n", StringComparison.Ordinal);
        bool mark = ours.StartsWith('\ufeff');
        List<Block> mine = Blocks(ours);
        List<Block> other = Blocks(theirs);
        List<Block> old = before is null ? [] : Blocks(before);
        List<string> twice = [];
        List<Block> merged = [];
        foreach (Block block in mine)
        {
            Block? origin = old.Find(one => one.Key == block.Key);
            Block? match = other.Find(one => one.Key == block.Key);
            if (match is not null)
            {
                merged.Add(block with { Lines = Join(origin?.Lines, block.Lines, match.Lines, twice) });
            }
            else if (origin is null || !origin.Lines.SequenceEqual(block.Lines))
            {
                merged.Add(block);
            }
        }

        string? after = null;
        foreach (Block block in other)
        {
            Block? origin = old.Find(one => one.Key == block.Key);
            if (!mine.Exists(one => one.Key == block.Key) && (origin is null || !origin.Lines.SequenceEqual(block.Lines)))
            {
                Insert(merged, block, after, other);
            }

            after = block.Key;
        }

        string text = string.Join(crlf ? "\r\n" : "\n", merged.SelectMany(block => block.Lines));
        return new MergedNote(mark ? '\ufeff' + text : text, [.. twice]);
    }

    /// <summary>The same for a text with the marks of a version control system in it; null where they are not whole.</summary>
    public static MergedNote? OfMarked(string text)
    {
        List<string> before = [];
        List<string> ours = [];
        List<string> theirs = [];
        char part = ConflictMark.End;
        bool found = false;
        foreach (string line in text.Split('\n'))
        {
            char? kind = ConflictMark.KindOf(line.TrimEnd('\r'));
            if (kind is null)
            {
                List<List<string>> into = part switch { ConflictMark.Ours => [ours], ConflictMark.Base => [before], ConflictMark.Between => [theirs], _ => [before, ours, theirs] };
                into.ForEach(one => one.Add(line));

                continue;
            }

            bool fits = kind switch
            {
                ConflictMark.Ours => part == ConflictMark.End,
                ConflictMark.Base => part == ConflictMark.Ours,
                ConflictMark.Between => part is ConflictMark.Ours or ConflictMark.Base,
                _ => part == ConflictMark.Between,
            };
            if (!fits)
            {
                return null;
            }

            part = kind.Value;
            found = true;
        }

        return found && part == ConflictMark.End ? Of(string.Join('\n', before), string.Join('\n', ours), string.Join('\n', theirs)) : null;
    }

    /// <summary>The opening, or an entry with all lines up to the next.</summary>
    private sealed record Block(string Key, DateOnly? Day, List<string> Lines);

    private static List<Block> Blocks(string text)
    {
        string[] lines = text.TrimStart('\ufeff').ReplaceLineEndings("\n").Split('\n');
        var entries = Note.Read(string.Join('\n', lines)).Entries;
        List<Block> blocks = [new("", DateOnly.MinValue, [.. lines[..(entries.Length == 0 ? lines.Length : entries[0].Line)]])];
        var seen = new Dictionary<string, int>();
        for (int i = 0; i < entries.Length; i++)
        {
            Entry entry = entries[i];
            string name = $"{entry.Head.Date:yyyy-MM-dd} {entry.Head.Time:HH:mm} {entry.Head.Kind}";
            int number = seen[name] = seen.GetValueOrDefault(name) + 1;
            blocks.Add(new Block($"{name} {number}", entry.Head.Date, [.. lines[entry.Line..(i + 1 < entries.Length ? entries[i + 1].Line : lines.Length)]]));
        }

        return blocks;
    }

    /// <summary>Puts an entry of theirs below the one it follows there, and below ours of the days before it.</summary>
    private static void Insert(List<Block> merged, Block block, string? after, List<Block> theirs)
    {
        int at = merged.FindIndex(one => one.Key == after) + 1;
        while (at < merged.Count && (merged[at].Key.Length == 0 || (merged[at].Day <= block.Day && !theirs.Exists(one => one.Key == merged[at].Key))))
        {
            at++;
        }

        // the last line of a text may have no break: the entry starts on a line of its own
        if (at > 0 && at == merged.Count && merged[at - 1].Lines is [.., ""] before && before.Count > 1)
        {
            before.RemoveAt(before.Count - 1);
            block = block with { Lines = block.Lines[^1].Length == 0 ? block.Lines : [.. block.Lines, ""] };
        }

        merged.Insert(at, block);
    }

    private static List<string> Join(List<string>? before, List<string> ours, List<string> theirs, List<string> twice)
    {
        List<string> old = before ?? Common(ours, theirs);
        Change mine = Change.Between(old, ours);
        Change other = Change.Between(old, theirs);
        List<(string Line, bool Stays)> joined = [];
        for (int i = 0; i <= old.Count; i++)
        {
            List<string> added = mine.Added[i];
            List<string> more = [.. other.Added[i]];
            foreach (string line in added)
            {
                more.Remove(line);
            }

            // a blank line stays at the end of what was added
            int blank = added.Count;
            while (more.Exists(line => line.Length > 0) && blank > 0 && added[blank - 1].Length == 0)
            {
                blank--;
            }

            joined.AddRange(((string[])[.. added[..blank], .. more, .. added[blank..]]).Select(line => (line, true)));
            if (i == old.Count)
            {
                break;
            }

            joined.Add((old[i], mine.Kept[i] && other.Kept[i]));
            string[] one = [.. mine.Added[i], .. mine.Added[i + 1]];
            string[] two = [.. other.Added[i], .. other.Added[i + 1]];
            if (!mine.Kept[i] && !other.Kept[i] && one.Length > 0 && two.Length > 0 && !one.SequenceEqual(two))
            {
                twice.Add(old[i]);
            }
        }

        // of two lines alike each side may have taken out another one: what both still have stays
        for (int i = joined.Count - 1; i >= 0; i--)
        {
            string line = joined[i].Line;
            if (!joined[i].Stays && joined.Count(one => one.Stays && one.Line == line) < Math.Min(ours.Count(one => one == line), theirs.Count(one => one == line)))
            {
                joined[i] = (line, true);
            }
        }

        return [.. joined.Where(one => one.Stays).Select(one => one.Line)];
    }

    private static List<string> Common(List<string> one, List<string> other)
    {
        bool[] kept = Change.Between(one, other).Kept;
        return [.. one.Where((_, index) => kept[index])];
    }

    /// <summary>What became of lines: which are still there, and what was put before each of them and at the end.</summary>
    private sealed record Change(bool[] Kept, List<string>[] Added)
    {
        /// <summary>More pairs than this are not compared: both versions of so long a stretch are kept whole.</summary>
        private const long MostPairs = 25_000_000;

        /// <summary>By the longest common subsequence, after what is the same at both ends.</summary>
        public static Change Between(List<string> before, List<string> now)
        {
            bool[] kept = new bool[before.Count];
            List<string>[] added = [.. Enumerable.Range(0, before.Count + 1).Select(_ => new List<string>())];
            int start = 0;
            while (start < before.Count && start < now.Count && before[start] == now[start])
            {
                kept[start++] = true;
            }

            int end = 0;
            while (end < before.Count - start && end < now.Count - start && before[^(end + 1)] == now[^(end + 1)])
            {
                kept[before.Count - ++end] = true;
            }

            int rows = before.Count - start - end;
            int columns = now.Count - start - end;
            int[,] longest = (long)rows * columns > MostPairs ? new int[0, 0] : new int[rows + 1, columns + 1];
            for (int row = longest.GetLength(0) - 2; row >= 0; row--)
            {
                for (int column = columns - 1; column >= 0; column--)
                {
                    longest[row, column] = before[start + row] == now[start + column] ? longest[row + 1, column + 1] + 1 : Math.Max(longest[row + 1, column], longest[row, column + 1]);
                }
            }

            int i = 0;
            for (int j = 0; j < columns; j++)
            {
                while (longest.Length > 0 && i < rows && before[start + i] != now[start + j] && longest[i + 1, j] >= longest[i, j + 1])
                {
                    i++;
                }

                if (longest.Length > 0 && i < rows && before[start + i] == now[start + j])
                {
                    kept[start + i++] = true;
                }
                else
                {
                    added[start + (longest.Length > 0 ? i : 0)].Add(now[start + j]);
                }
            }

            return new Change(kept, added);
        }
    }
}
