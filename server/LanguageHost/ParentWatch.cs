using System.Diagnostics;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.Session;

namespace HealthNotes.LanguageHost;

/// <summary>A client that dies can't say goodbye: the server looks for its process and ends without it.</summary>
internal static class ParentWatch
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    /// <summary>Looks from now on.</summary>
    public static void Start(int process, Server server, ServerLog log) => _ = WatchAsync(process, server, log);

    private static async Task WatchAsync(int process, Server server, ServerLog log)
    {
        using var timer = new PeriodicTimer(Interval);
        while (!server.Ended.IsCompleted && await timer.WaitForNextTickAsync().ConfigureAwait(false))
        {
            if (!IsAlive(process))
            {
                log.Note($"the client's process {process} is gone");
                server.End();
                return;
            }
        }
    }

    private static bool IsAlive(int process)
    {
        try
        {
            if (OperatingSystem.IsLinux())
            {
                // a process that ended but was not waited for still has its number
                string status = File.ReadAllText($"/proc/{process}/stat");
                return status[(status.LastIndexOf(')') + 2)..][0] is not ('Z' or 'X');
            }

            using var found = Process.GetProcessById(process);
            return !found.HasExited;
        }
        catch (Exception problem) when (problem is ArgumentException or InvalidOperationException or FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or System.ComponentModel.Win32Exception or IndexOutOfRangeException)
        {
            // It can't be told (or it went away while being read): the next look tells.
            return File.Exists($"/proc/{process}/stat") || !OperatingSystem.IsLinux();
        }
    }
}
