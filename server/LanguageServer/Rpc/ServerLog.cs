using System.Globalization;
using HealthNotes.Files;
using HealthNotes.Rendering;

namespace HealthNotes.LanguageServer.Rpc;

/// <summary>
/// Lines about what the server does: faults to standard error, everything to the log file where one was asked for. Nothing
/// but the protocol goes to standard output, and nothing of a note's text goes here.
/// </summary>
public sealed class ServerLog(string? path)
{
    private readonly Lock gate = new();
    private bool broken;

    /// <summary>True when there is a file, so that a line is worth putting together.</summary>
    public bool HasFile => path is not null;

    /// <summary>Says before the session whether the file may be added to.</summary>
    /// <exception cref="RefusedException">It is a note, somebody's own file, or no file at all.</exception>
    public void Check()
    {
        if (path is not null)
        {
            OutputFile.Check(path, [], force: false);
            if (RealFile.At(path) is { IsRegular: false })
            {
                throw new RefusedException($"{path} is not a file; name another one for the log");
            }
        }
    }

    /// <summary>A line for the file.</summary>
    public void Note(string line)
    {
        if (path is not null)
        {
            Append(line);
        }
    }

    /// <summary>A line that whoever looks for the cause of trouble needs.</summary>
    public void Fault(string line)
    {
        lock (gate)
        {
            try
            {
                Console.Error.WriteLine("hnote lsp: " + string.Join(Environment.NewLine, line.ReplaceLineEndings("\n").Split('\n').Select(ShownText.Of)));
            }
            catch (IOException)
            {
                // nobody reads standard error any more
            }
        }

        Note(line);
    }

    private void Append(string line)
    {
        lock (gate)
        {
            if (broken)
            {
                return;
            }

            try
            {
                if (!File.Exists(path))
                {
                    File.AppendAllText(path!, PageMark.Log + Environment.NewLine);
                }

                File.AppendAllText(path!, string.Create(CultureInfo.InvariantCulture, $"{DateTime.Now:yyyy-MM-dd HH:mm:ss.fff} {line}{Environment.NewLine}"));
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
            {
                broken = true;
                Console.Error.WriteLine(ShownText.Of($"hnote lsp: can't write to the log {path}"));
            }
        }
    }
}
