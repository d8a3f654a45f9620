namespace HealthNotes.EndToEnd.Support;

/// <summary>
/// Finds a program that is not part of the project. Where it is missing, the test is skipped with the line that installs
/// it; with <c>HNOTE_E2E=required</c> the test fails instead, so that a build server cannot skip in silence.
/// </summary>
public static class ExternalTool
{
    /// <summary>Where the browser is: <c>HNOTE_CHROMIUM</c>, or the place it is installed to.</summary>
    public static string Chromium => Find("HNOTE_CHROMIUM", "apt-get install chromium", "/usr/bin/chromium");

    /// <summary>The path of a program: the variable's value when it is set, else the first place that exists.</summary>
    /// <param name="variable">The environment variable that names the program.</param>
    /// <param name="install">The command that installs it.</param>
    /// <param name="places">Where it usually is.</param>
    public static string Find(string variable, string install, params string[] places)
    {
        string? named = Environment.GetEnvironmentVariable(variable);
        string[] candidates = string.IsNullOrEmpty(named) ? places : [named];
        string? found = Array.Find(candidates, File.Exists);
        string missing = $"{string.Join(" or ", candidates)} is missing: {install}, or set {variable}.";
        Need(found is not null, missing);
        return found!;
    }

    /// <summary>Skips the test, or fails it where nothing may be skipped, when something from outside is not there.</summary>
    /// <param name="there">Whether it is there.</param>
    /// <param name="missing">What is missing and how to get it.</param>
    public static void Need(bool there, string missing)
    {
        if (!there && Environment.GetEnvironmentVariable("HNOTE_E2E") == "required")
        {
            Assert.Fail(missing);
        }

        Skip.IfNot(there, missing);
    }
}
