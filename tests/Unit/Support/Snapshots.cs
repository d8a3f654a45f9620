using Snapshooter;
using Snapshooter.Xunit;

namespace HealthNotes.Tests.Support;

/// <summary>
/// The one place that knows the snapshot library. A snapshot lies in <c>__snapshots__</c> beside its test; a new one is
/// written on the first run (in CI, where nobody would see it, it fails), a changed one fails and leaves the new text in <c>__mismatch__</c> for a person to compare.
/// </summary>
public static class Snapshots
{
    public static void Match(string text, string name)
    {
        if (Environment.GetEnvironmentVariable("CI") == "true")
        {
            Environment.SetEnvironmentVariable("SNAPSHOOTER_STRICT_MODE", "true");
        }

        Snapshot.Match(text, new SnapshotNameExtension(name));
    }
}
