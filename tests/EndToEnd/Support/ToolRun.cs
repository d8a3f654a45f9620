using System.Diagnostics;

namespace HealthNotes.EndToEnd.Support;

/// <summary>What a run of an outside program left.</summary>
internal sealed record ToolRun(int Code, string Output, string Errors)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Runs a program to its end. One that does not end is ended, with its children, and fails the test.</summary>
    public static async Task<ToolRun> OfAsync(string folder, IReadOnlyList<string> command, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        using var late = new CancellationTokenSource(Patience);
        try
        {
            await process.WaitForExitAsync(late.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{command[0]} did not end within {Patience.TotalMinutes} minutes\n{await output}\n{await errors}");
        }

        return new ToolRun(process.ExitCode, await output, await errors);
    }
}
