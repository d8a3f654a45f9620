namespace HealthNotes.Rendering.Markdown;

/// <summary>A section of the page. Its key is its anchor and never shown.</summary>
internal sealed record PageSection(string Key, string Title, IReadOnlyList<SectionPart> Parts);

/// <summary>A part of a section.</summary>
internal abstract record SectionPart;

/// <summary>The page's own Markdown; text of the note is escaped in it.</summary>
internal sealed record OwnPart(string Markdown) : SectionPart;

/// <summary>Free text of the note: Markdown of its own, which must not touch the rest of the page.</summary>
internal sealed record FreePart(string Markdown) : SectionPart;

/// <summary>A drawing or a table that Markdown has no words for.</summary>
/// <param name="Html">Our own markup: every text in it is escaped, and it holds no style and no script.</param>
/// <param name="Markdown">The same told in Markdown, for the file without drawings; empty when the section says it elsewhere.</param>
internal sealed record FigurePart(string Html, string Markdown) : SectionPart;

/// <summary>The whole page in Markdown, section by section.</summary>
/// <param name="Title">The title of the file, plain text.</param>
/// <param name="Name">The pet's name, plain text.</param>
/// <param name="Intro">What the page is, plain text.</param>
/// <param name="Summary">What it shows, plain text.</param>
/// <param name="Pet">Who the notes are about.</param>
/// <param name="Sections">What was found.</param>
/// <param name="Closing">Cautions.</param>
/// <param name="LastWord">The closing line, plain text.</param>
internal sealed record PageText(string Title, string Name, string Intro, string Summary, PageSection Pet, IReadOnlyList<PageSection> Sections, PageSection Closing, string LastWord);
