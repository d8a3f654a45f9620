using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>
/// A number that two sets of diagnostics share only when they say the same (FNV-1a, 64 bits: Fowler, Noll and Vo): cheaper
/// to keep than the diagnostics. It is not for guarding against anybody.
/// </summary>
internal static class Fingerprint
{
    private const ulong Basis = 14695981039346656037;
    private const ulong Prime = 1099511628211;

    /// <summary>The number of these diagnostics.</summary>
    public static ulong Of(Diagnostic[] diagnostics)
    {
        ulong print = Basis;
        foreach (Diagnostic diagnostic in diagnostics)
        {
            print = Add(Add(Add(print, diagnostic.Range), diagnostic.Code), diagnostic.Message);
            print = Add(Add(Add(print, (uint)diagnostic.Severity), diagnostic.Data?.Level), diagnostic.Data?.Nearest);
            foreach (DiagnosticRelatedInformation related in diagnostic.RelatedInformation ?? [])
            {
                print = Add(Add(print, related.Location.Range), related.Message);
            }
        }

        return print;
    }

    private static ulong Add(ulong print, Protocol.Range range) =>
        Add(Add(Add(Add(print, (uint)range.Start.Line), (uint)range.Start.Character), (uint)range.End.Line), (uint)range.End.Character);

    private static ulong Add(ulong print, uint number) => (print ^ number) * Prime;

    private static ulong Add(ulong print, string? text)
    {
        foreach (char c in text ?? "")
        {
            print = (print ^ c) * Prime;
        }

        return (print ^ 0xFFFFF) * Prime;
    }
}
