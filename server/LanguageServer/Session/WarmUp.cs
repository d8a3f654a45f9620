using HealthNotes.Features.Documents;

namespace HealthNotes.LanguageServer.Session;

/// <summary>Reads the vocabulary and the tables before the first note needs them.</summary>
internal static class WarmUp
{
    private const string Note = "pet a\nspecies dog\n2026-01-01 check\n  rr 8/30s asleep\n  weight 20kg\n";

    /// <summary>Reads a little note from end to end.</summary>
    public static void Run() => _ = Document.Open("warm-up:", 0, Note, new DateOnly(2026, 1, 1)).Analysis;
}
