using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;

namespace HealthNotes.Tests.Analysis.Trends;

/// <summary>Notes with one kind of reading on many days, and what one rule finds in them.</summary>
internal static class Drawn
{
    public const string Dog = "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n";
    public const string OldDog = "pet Marlow\nspecies dog\nborn 2012-05-01\nadult-weight 15kg\n";
    public const string Cat = "pet Tansy\nspecies cat\nborn 2020-05-01\nsex female neutered\n";

    /// <summary>Entries every so many days, the last on 2026-11-20; a line of several parts with <c>|</c> becomes several lines.</summary>
    public static string Every(int days, params string[] lines) => string.Concat(lines.Select((line, index) =>
        Day(new DateOnly(2026, 11, 20).AddDays(-days * (lines.Length - 1 - index)), line)));

    public static string Day(DateOnly day, string line) =>
        $"{day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} log\n" + string.Concat(line.Split('|').Select(part => $"  {part.Trim()}\n"));

    /// <summary>What a rule finds: <c>2026-11-20 watch</c>.</summary>
    public static string[] By(string rule, string note)
    {
        NoteAnalysis analysis = MarkedFindings.Read(note);
        Assert.DoesNotContain(analysis.Findings, finding => finding.Level == FindingLevel.Error);
        return [.. analysis.Findings.Where(finding => finding.Rule == rule)
            .Select(finding => $"{analysis.Note.EntryAt(finding.Line)!.Head.Date!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} {finding.Level.ToString().ToLowerInvariant()}")
            .Order(StringComparer.Ordinal)];
    }

    public static NoteFinding One(string rule, string note) => Assert.Single(MarkedFindings.Read(note).Findings, finding => finding.Rule == rule);
}
