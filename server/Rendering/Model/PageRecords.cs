using HealthNotes.Analysis.Findings;
using HealthNotes.Rendering.Photos;

namespace HealthNotes.Rendering.Model;

/// <summary>A line of the note as written, with its number from 1.</summary>
internal sealed record WrittenLine(int Number, DateOnly? Day, string Text);

/// <summary>A line of the home-care log.</summary>
internal sealed record LogLine(DateOnly? Day, string By, TimeOnly? Time, string What, string Amount, FindingLevel? Level);

/// <summary>A picture beside the note; <paramref name="Photo"/> is null where only its name is shown, and then <paramref name="Problem"/> may say why.</summary>
internal sealed record Picture(DateOnly? Day, string File, string Caption, ShrunkPhoto? Photo, string? Problem);

/// <summary>A block of free text in Markdown; <paramref name="About"/> is the line it stands below, as written.</summary>
internal sealed record FreeText(DateOnly? Day, string Heading, string? About, string Markdown, bool Cut);

/// <summary>The lines that are not understood: those of the current period, and how many earlier ones.</summary>
internal sealed record NotUnderstood(Shown<WrittenLine> Lines, IReadOnlyList<int> EarlierLines, int Earlier);
