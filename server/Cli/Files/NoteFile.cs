using System.Text;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Cli.Files;

/// <summary>A note read from disk.</summary>
/// <param name="Path">The path as it was given.</param>
/// <param name="Text">The whole text; a UTF-8 byte-order mark is its first character.</param>
/// <param name="Encoding">How to write it back.</param>
/// <param name="Bytes">What the file held when it was read.</param>
internal sealed record NoteFile(string Path, string Text, Encoding Encoding, byte[] Bytes)
{
    /// <summary>No note is larger: a life of daily checks is below one megabyte.</summary>
    private const long MostBytes = 32L * 1024 * 1024;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a note. A single dash reads standard input.</summary>
    /// <exception cref="RefusedException">The file can't be read, or is not text.</exception>
    public static NoteFile Read(string path)
    {
        byte[] bytes = ReadBytes(path);
        Encoding encoding = EncodingOf(bytes);
        try
        {
            string text = encoding.GetString(bytes);
            if (LooksBinary(text))
            {
                throw new RefusedException($"{path} is not a text file, so it is not a note");
            }

            return new NoteFile(path, text, encoding, bytes);
        }
        catch (DecoderFallbackException)
        {
            (int line, int column) = FirstInvalid(bytes);
            throw new RefusedException($"{path} can't be read as text: line {line}, column {column} has bytes that are not UTF-8. Save it in your editor as UTF-8 and try again");
        }
    }

    /// <summary>What it says, under the clinic's rules that lie over it.</summary>
    /// <param name="rules">Those rules, where the caller reads several notes and reports what is wrong with them; else it is reported here.</param>
    public Note ToNote(RulesFiles? rules = null)
    {
        RulesFiles over = rules ?? new RulesFiles();
        Note note = over.Read(Path == "-" ? null : Path, Text);
        if (rules is null)
        {
            ReadableNotes.Report(over, [Path]);
        }

        return note;
    }

    /// <summary>Writes another text in its place.</summary>
    /// <exception cref="RefusedException">It was saved meanwhile, or can't be written; the file is as it was.</exception>
    public void Replace(string text) => AtomicFile.Replace(Path, Encoding.GetBytes(text), Bytes);

    private static byte[] ReadBytes(string path)
    {
        try
        {
            if (path != "-")
            {
                return RealFile.Read(path, MostBytes);
            }

            using Stream input = Terminal.OpenInput();
            return RealFile.Read(input, MostBytes);
        }
        catch (RefusedException refused)
        {
            throw new RefusedException($"can't read {path}: {refused.Message}");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string why = problem is FileNotFoundException or DirectoryNotFoundException ? "there is no such file"
                : problem is UnauthorizedAccessException ? "you are not allowed to read it"
                : "the system refused it";
            throw new RefusedException($"can't read {path}: {why}");
        }
    }

    /// <summary>UTF-16 where a byte-order mark says so (old Windows editors), UTF-8 otherwise.</summary>
    private static Encoding EncodingOf(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: false, throwOnInvalidBytes: true),
        [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: false, throwOnInvalidBytes: true),
        _ => Utf8,
    };

    /// <summary>A stray control character is an error in a line; many of them mean that the file is not a note.</summary>
    private static bool LooksBinary(string text)
    {
        int controls = 0;
        foreach (char c in text.AsSpan(0, Math.Min(text.Length, 8_192)))
        {
            controls += c < ' ' && c is not ('\t' or '\n' or '\r' or '\f') ? 1 : 0;
        }

        return controls > 8 && controls * 20 > Math.Min(text.Length, 8_192);
    }

    private static (int Line, int Column) FirstInvalid(byte[] bytes)
    {
        int good = 0;
        int line = 1;
        int column = 1;
        while (good < bytes.Length && Rune.DecodeFromUtf8(bytes.AsSpan(good), out Rune rune, out int used) == System.Buffers.OperationStatus.Done)
        {
            good += used;
            column = rune.Value == '\n' ? 1 : column + rune.Utf16SequenceLength;
            line += rune.Value == '\n' ? 1 : 0;
        }

        return (line, column);
    }
}
