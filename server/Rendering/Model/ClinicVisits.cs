using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Model;

/// <summary>The visits whose words stand at the top of the page.</summary>
internal static class ClinicVisits
{
    /// <summary>What the vet said longer ago no longer stands at the top (common practice, no source).</summary>
    public const int VetDays = 365;

    private static readonly string[] VetWords = ["vet", "veterinarian", "dr", "doctor", "surgeon"];

    /// <summary>The last visit by a vet in the year before the last visit, where that one was somebody else's; else null.</summary>
    public static Entry? ByVet(PageContext context) => context.Analysis.Record.Period.Visit is { Head: { By: { } by, Date: { } on } } && !IsVet(by)
        ? context.Analysis.Note.Entries.LastOrDefault(entry => entry.Head is { Kind: "visit", By: { } who, Date: { } day } && IsVet(who) && day < on && day.Plus(VetDays) > on) : null;

    /// <summary>The visits that are quoted.</summary>
    public static IEnumerable<Entry> Quoted(PageContext context) => new[] { context.Analysis.Record.Period.Visit, ByVet(context) }.OfType<Entry>();

    private static bool IsVet(string by) => by.ToLowerInvariant().Split(' ', '.', ',').Any(VetWords.Contains);
}
