using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering;

/// <summary>Whole pages, for a person to read the difference.</summary>
public class PageSnapshotTests
{
    public static TheoryData<string, string> Notes => new()
    {
        { "check", Pages.Check },
        { "empty", "" },
        { "facts-only", "pet Tansy\nspecies cat\nborn ~2014\n" },
        { "broken-only", "pte Tansy\nspecies dgo\n2026-13-40 check\n  flibber\n" },
        { "us-units", "pet Tansy\nspecies cat\nsex female neutered\nborn 2015\nunits us\n2026-10-01 log\n  temp 38.6C\n  weight 4.2kg\n  lump mid-chest 13mm firm\n  07:00 water 200ml\n" },
    };

    [Theory]
    [MemberData(nameof(Notes))]
    public void Markdown(string name, string note) => Snapshots.Match(Pages.Markdown(note), name);

    /// <summary>The style has its own file; here it would only hide the page.</summary>
    [Theory]
    [MemberData(nameof(Notes))]
    public void Html(string name, string note)
    {
        string html = Pages.Html(note);
        int style = html.IndexOf("<style>", StringComparison.Ordinal);
        int end = html.IndexOf("</style>", StringComparison.Ordinal);
        int hash = html.IndexOf("'sha256-", StringComparison.Ordinal);
        string withoutStyle = html[..hash] + "'…'" + html[html.IndexOf('\'', hash + 1)..style][1..] + "<style>…" + html[end..];
        Snapshots.Match(withoutStyle, name);
    }
}
