using HealthNotes.Features.Checks;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>
/// Our own request <c>healthNotes/page</c>, outside the specification: the visit page of an open note as it stands in the
/// editor, saved or not. Nothing is written to disk.
/// </summary>
/// <param name="Uri">The note's name.</param>
/// <param name="View">Another page instead: <c>owner</c>, with what to do next; <c>share</c>, without what names people, or <c>sheet</c>, the blank check sheet.</param>
internal sealed record PageParams(string Uri, string? View = null);

/// <summary>The answer to <see cref="PageParams"/>; null when no such note is open.</summary>
/// <param name="Html">One self-contained HTML file without a script.</param>
internal sealed record PageResult(string Html);

/// <summary>Our own request <c>healthNotes/due</c>: what is due by a note.</summary>
/// <param name="Uri">The note's name.</param>
/// <param name="Text">Its text, for a note that is not open.</param>
internal sealed record DueParams(string Uri, string? Text = null);

/// <summary>The answer to <see cref="DueParams"/>; null when no such note is open and there is no text.</summary>
internal sealed record DueResult(DueEntry[] Due);

/// <summary>One thing due: the line that asks for it, from 0, what it is, and when, in words.</summary>
internal sealed record DueEntry(int Line, string What, string When);

/// <summary>
/// The answer to our own request <c>healthNotes/check</c>: this pet's next check, one step after another, in the order of an examination.
/// </summary>
/// <param name="Head">The heading of today's check.</param>
/// <param name="Steps">The parts and measures.</param>
internal sealed record CheckStepsResult(string Head, WalkStep[] Steps);
