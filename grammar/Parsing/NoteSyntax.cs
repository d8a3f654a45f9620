using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// The lossless tree of a note: its lines, each with its tokens. Printing gives back every character of the text it was
/// read from. Immutable.
/// </summary>
public sealed class NoteSyntax
{
    private const char Mark = '\uFEFF';
    private NoteSyntax(NoteVocabulary vocabulary, bool byteOrderMark, ImmutableArray<LineSyntax> lines)
    {
        Vocabulary = vocabulary;
        ByteOrderMark = byteOrderMark;
        Lines = lines;
    }

    /// <summary>The words that it was read with.</summary>
    public NoteVocabulary Vocabulary { get; }

    /// <summary>True when the text started with a byte-order mark.</summary>
    public bool ByteOrderMark { get; }

    /// <summary>The lines in order; never empty.</summary>
    public ImmutableArray<LineSyntax> Lines { get; }

    /// <summary>Reads a note. Never fails: what is not understood is kept and flagged.</summary>
    public static NoteSyntax Parse(string text) => Parse(text, NoteVocabulary.Default);

    /// <summary>Reads a note with a given vocabulary.</summary>
    public static NoteSyntax Parse(string text, NoteVocabulary vocabulary)
    {
        bool marked = text.StartsWith(Mark);
        return new NoteSyntax(vocabulary, marked, ReadLines(vocabulary, marked ? text[1..] : text));
    }

    /// <summary>
    /// The note with <paramref name="count"/> lines from <paramref name="first"/> on replaced by <paramref name="text"/>.
    /// Only the new lines are read; all others are kept as they are. Unless it replaces the last lines, the text must end
    /// in a line break; it must not part a <c>\r</c> from its <c>\n</c>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There are no such lines.</exception>
    public NoteSyntax WithLines(int first, int count, string text)
    {
        ImmutableArray<LineSyntax>.Builder lines = ImmutableArray.CreateBuilder<LineSyntax>(Lines.Length + 1);
        lines.AddRange(Lines.AsSpan()[..first]);
        bool marked = first == 0 && !ByteOrderMark && text.StartsWith(Mark);
        lines.AddRange(ReadLines(Vocabulary, marked ? text[1..] : text));
        ReadOnlySpan<LineSyntax> rest = Lines.AsSpan()[(first + count)..];
        if (rest.Length > 0 && lines[^1] is { Text: "", Ending: "" })
        {
            lines.RemoveAt(lines.Count - 1);
        }

        lines.AddRange(rest);
        return new NoteSyntax(Vocabulary, ByteOrderMark || marked, lines.DrainToImmutable());
    }

    /// <summary>The whole text, put together from the tokens.</summary>
    public string Print()
    {
        var text = new StringBuilder();
        if (ByteOrderMark)
        {
            text.Append(Mark);
        }

        foreach (LineSyntax line in Lines)
        {
            line.Print(text);
        }

        return text.ToString();
    }

    private static ImmutableArray<LineSyntax> ReadLines(NoteVocabulary vocabulary, string text)
    {
        // a line means the same wherever it stands: what is written many times is read once
        var different = new OrderedDictionary<(string Text, string Ending), int>();
        var lines = new List<int>();
        foreach ((string Text, string Ending) line in LineSplitter.Split(text))
        {
            different.TryAdd(line, 0, out int index);
            lines.Add(index);
        }

        LineSyntax[] read = AllCores.Make(different.Count, () => new LineReader(vocabulary), (reader, index) => reader.Read(different.GetAt(index).Key.Text, different.GetAt(index).Key.Ending));
        return [.. lines.Select(index => read[index])];
    }
}
