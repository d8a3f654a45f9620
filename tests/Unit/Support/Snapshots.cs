using Snapshooter;
using Snapshooter.Xunit;

namespace HealthNotes.Tests.Support;

/// <summary>
/// The one place that knows the snapshot library. A snapshot lies in <c>__snapshots__</c> beside its test; a new one is
/// written on the first run, a changed one fails and leaves the new text in <c>__mismatch__</c> for a person to compare.
/// </summary>
public static class Snapshots
{
    public static void Match(string text, string name) => Snapshot.Match(text, new SnapshotNameExtension(name));
}
