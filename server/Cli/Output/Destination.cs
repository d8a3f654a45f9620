using HealthNotes.Files;

namespace HealthNotes.Cli.Output;

/// <summary>Where what is made of a note goes: to a file, or to standard output.</summary>
/// <param name="Path">The file; null for standard output.</param>
/// <param name="Inputs">The notes that it is made of.</param>
/// <param name="Force">True to replace a file that was not made by hnote.</param>
internal sealed record Destination(string? Path, IReadOnlyCollection<string> Inputs, bool Force)
{
    private const string Standard = "-";

    /// <summary>The place that was asked for, else beside the note; what is made of standard input goes to standard output.</summary>
    /// <param name="note">The note, or a dash.</param>
    /// <param name="asked">What <c>--out</c> named; null when nothing was asked for.</param>
    /// <param name="ending">What stands after the note's name, in place of its own ending.</param>
    /// <param name="force">True to replace a file that was not made by hnote.</param>
    /// <exception cref="RefusedException">It is a note, or a file that was not made by hnote.</exception>
    public static Destination Of(string note, string? asked, string ending, bool force)
    {
        if (asked == Standard || (asked is null && note == Standard))
        {
            return new Destination(null, [], force);
        }

        string path = asked ?? System.IO.Path.ChangeExtension(note, null) + ending;
        OutputFile.Check(path, [note], force);
        return new Destination(path, [note], force);
    }

    /// <summary>Writes it; when it went to a file, reports where.</summary>
    /// <param name="bytes">What was made.</param>
    /// <param name="output">Where the report goes.</param>
    /// <param name="about">What it is, for the report.</param>
    public void Write(byte[] bytes, TextWriter output, string about)
    {
        if (Path is null)
        {
            Terminal.WriteResult(bytes);
            return;
        }

        OutputFile.Write(Path, bytes, Inputs, Force);
        output.WriteLine($"Wrote {Path}: {about}");
    }
}
