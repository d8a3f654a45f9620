namespace HealthNotes.Cli.Files;

/// <summary>The program that runs.</summary>
internal static class ThisProgram
{
    /// <summary>What tells this build of it from any other.</summary>
    public static string Build
    {
        get
        {
            var program = new FileInfo(Path.Combine(AppContext.BaseDirectory, "hnote.dll"));
            program = program.Exists ? program : new FileInfo(Environment.ProcessPath ?? "");
            return $"{typeof(ThisProgram).Module.ModuleVersionId} {typeof(ThisProgram).Assembly.GetName().Version} {program.Length} {program.LastWriteTimeUtc:O}";
        }
    }
}
