using System.Globalization;

namespace HealthNotes.LanguageServer.State;

/// <summary>
/// The semantic tokens sent last, so that the next answer can be what changed. It remembers and decides nothing: whatever it
/// has forgotten is sent whole.
/// </summary>
internal sealed class TokenCache
{
    private const int MostDocuments = 8;
    private readonly Lock gate = new();
    private readonly List<(string Uri, string Id, int[] Data)> kept = [];
    private long last;

    /// <summary>Keeps the tokens of a document; the result names them.</summary>
    public string Keep(string uri, int[] data)
    {
        lock (gate)
        {
            string id = (++last).ToString(CultureInfo.InvariantCulture);
            kept.RemoveAll(one => one.Uri == uri);
            kept.Add((uri, id, data));
            if (kept.Count > MostDocuments)
            {
                kept.RemoveAt(0);
            }

            return id;
        }
    }

    /// <summary>The tokens of that name, or null.</summary>
    public int[]? Find(string uri, string? id)
    {
        lock (gate)
        {
            return kept.Find(one => one.Uri == uri && one.Id == id).Data;
        }
    }
}
