using HealthNotes.Export.Tables;

namespace HealthNotes.Cli.Export;

/// <summary>Where the rows of an export go. Disposing of it completes the files.</summary>
internal abstract class RowSink : IDisposable
{
    /// <summary>Makes of the rows of one note what is written; runs on several threads.</summary>
    public abstract object Prepare(ExportTable table, IReadOnlyList<object?[]> rows);

    /// <summary>Writes it; runs on one thread, in the order of the notes.</summary>
    public abstract void Take(ExportTable table, object prepared);

    public abstract void Dispose();
}
