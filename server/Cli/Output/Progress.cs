namespace HealthNotes.Cli.Output;

/// <summary>Says how far long work is, on a terminal only and on the error stream, so that output stays clean.</summary>
internal sealed class Progress(int total)
{
    private const int WorthShowing = 5;
    private readonly bool shown = total >= WorthShowing;
    private int done;

    public void Next(string path)
    {
        done++;
        if (shown)
        {
            Terminal.ReplaceLine($"{done} of {total} done: {path}");
        }
    }

    public void Clear()
    {
        if (shown)
        {
            Terminal.ReplaceLine("");
        }
    }
}
