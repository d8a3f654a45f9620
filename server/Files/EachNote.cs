namespace HealthNotes.Files;

/// <summary>Work on several notes: what goes wrong with one is reported, and does not keep the others.</summary>
/// <param name="report">Takes a message for the user.</param>
public sealed class EachNote(Action<string> report)
{
    /// <summary>True once a note could not be read or written.</summary>
    public bool Refused { get; private set; }

    /// <summary>True once something went wrong inside.</summary>
    public bool Failed { get; private set; }

    /// <summary>Works on one note; the result is why it could not be done, or null when it was.</summary>
    /// <param name="path">The note, as it was named.</param>
    /// <param name="work">What is done.</param>
    public string? Do(string path, Action work)
    {
        ArgumentNullException.ThrowIfNull(work);
        string why;
        try
        {
            work();
            return null;
        }
        catch (RefusedException refused)
        {
            Refused = true;
            why = refused.Message;
        }
        catch (Exception fault) when (!IsOfTheProcess(fault))
        {
            Failed = true;
            why = $"{path}: an internal error in hnote ({fault.GetType().Name}: {fault.Message}). The note is unchanged. Please report it with the lines that caused it.";
        }

        report(why);
        return why;
    }

    /// <summary>What no note is the cause of: no memory, or a reader that has gone away.</summary>
    private static bool IsOfTheProcess(Exception fault) => fault is OutOfMemoryException or OperationCanceledException or IOException;
}
