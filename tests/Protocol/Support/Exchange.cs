using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>Everything that went to and fro, for whoever reads why a test failed.</summary>
internal sealed class Exchange
{
    private const int MostShown = 60_000;
    private readonly Lock gate = new();
    private readonly List<string> lines = [];
    private readonly long start = Stopwatch.GetTimestamp();

    public void Add(string direction, string message)
    {
        lock (gate)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{Stopwatch.GetElapsedTime(start).TotalMilliseconds,8:0.0} {direction} {message}"));
        }
    }

    /// <summary>All of it; of a very long one the end, and where the rest is.</summary>
    public override string ToString()
    {
        string all;
        lock (gate)
        {
            all = new StringBuilder().AppendJoin('\n', lines).ToString();
        }

        if (all.Length <= MostShown)
        {
            return all;
        }

        string path = Path.Combine(Path.GetTempPath(), $"hnote-exchange-{Guid.NewGuid():n}.txt");
        File.WriteAllText(path, all);
        return $"(the whole of it: {path})\n…{all[^MostShown..]}";
    }
}
