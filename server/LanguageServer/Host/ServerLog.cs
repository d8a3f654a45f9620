using System.Globalization;

namespace HealthNotes.LanguageServer.Host;

/// <summary>
/// Lines about what the server does: faults to standard error, everything to the log file where one was asked for. Nothing
/// but the protocol goes to standard output, and nothing of a note's text goes here.
/// </summary>
internal sealed class ServerLog(string? path)
{
    private readonly Lock gate = new();
    private bool broken;

    /// <summary>True when there is a file, so that a line is worth putting together.</summary>
    public bool HasFile => path is not null;

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
                Console.Error.WriteLine("hnote lsp: " + line);
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
                File.AppendAllText(path!, string.Create(CultureInfo.InvariantCulture, $"{DateTime.Now:yyyy-MM-dd HH:mm:ss.fff} {line}{Environment.NewLine}"));
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
            {
                broken = true;
                Console.Error.WriteLine($"hnote lsp: can't write to the log {path}");
            }
        }
    }
}
