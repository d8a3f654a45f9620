namespace HealthNotes.LanguageServer.Protocol;

/// <summary>
/// Our own request <c>healthNotes/page</c>, outside the specification: the visit page of an open note as it stands in the
/// editor, saved or not. Nothing is written to disk.
/// </summary>
/// <param name="Uri">The note's name.</param>
internal sealed record PageParams(string Uri);

/// <summary>The answer to <see cref="PageParams"/>; null when no such note is open.</summary>
/// <param name="Html">One self-contained HTML file without a script.</param>
internal sealed record PageResult(string Html);
