using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;

namespace HealthNotes.Rendering.Blocks;

/// <summary>A piece of running text. Its text is plain: each writer escapes it.</summary>
internal abstract record Inline;

/// <summary>Plain words.</summary>
internal sealed record Words(string Text) : Inline;

/// <summary>A line of the note, or a part of it, as it was written.</summary>
internal sealed record Quoted(string Text) : Inline;

/// <summary>A label.</summary>
internal sealed record Strong(string Text) : Inline;

/// <summary>The mark of a level.</summary>
internal sealed record LevelMark(FindingLevel Level, string Name) : Inline;

/// <summary>Room to write in, by its style: <c>field</c>, <c>box</c>, <c>line</c>.</summary>
internal sealed record Blank(string Kind) : Inline;

/// <summary>Small print.</summary>
internal sealed record Small(Prose Text) : Inline;

/// <summary>A link that we make: to a place on the page (<c>#key</c>), to a page beside this one, or to a telephone number. Never a target that a note names.</summary>
internal sealed record Link(string Target, Prose Text) : Inline;

/// <summary>Running text of one paragraph, list item or cell.</summary>
internal sealed record Prose(ImmutableArray<Inline> Parts)
{
    /// <summary>No text.</summary>
    public static Prose Empty { get; } = new([]);

    /// <summary>True when there is nothing to show.</summary>
    public bool IsEmpty => Parts.IsEmpty;

    /// <summary>The level that the text opens or consists of; null when it opens with other words.</summary>
    public FindingLevel? Level => Parts.FirstOrDefault() is LevelMark mark ? mark.Level : null;

    /// <summary>Its letters, without any mark.</summary>
    public string Plain => string.Concat(Parts.Select(part => part switch
    {
        Words words => words.Text,
        Quoted quoted => quoted.Text,
        Strong strong => strong.Text,
        LevelMark mark => mark.Name,
        Small small => small.Text.Plain,
        Link link => link.Text.Plain,
        _ => "",
    }));

    /// <summary>Plain words; none when they are empty.</summary>
    public static implicit operator Prose(string text) => text.Length == 0 ? Empty : new([new Words(text)]);

    /// <summary>One after the other.</summary>
    public static Prose operator +(Prose left, Prose right) => left.IsEmpty ? right : right.IsEmpty ? left : new([.. left.Parts, .. right.Parts]);

    /// <summary>A line as it was written.</summary>
    public static Prose Quote(string text) => text.Length == 0 ? Empty : new([new Quoted(text)]);

    /// <summary>A label.</summary>
    public static Prose Strong(string text) => text.Length == 0 ? Empty : new([new Strong(text)]);

    /// <summary>Room to write in.</summary>
    public static Prose Blank(string kind) => new([new Blank(kind)]);

    /// <summary>Small print.</summary>
    public static Prose Small(Prose text) => text.IsEmpty ? Empty : new([new Small(text)]);

    /// <summary>A link.</summary>
    public static Prose Link(string target, Prose text) => new([new Link(target, text)]);

    /// <summary>The mark of a level; nothing for null.</summary>
    public static Prose Mark(FindingLevel? level, Func<FindingLevel, string> name) => level is { } marked ? new([new LevelMark(marked, name(marked))]) : Empty;

    /// <summary>With something between; nothing for no parts.</summary>
    public static Prose Join(string between, IEnumerable<Prose> parts) =>
        new([.. parts.Where(part => !part.IsEmpty).SelectMany((part, at) => at == 0 ? part.Parts.AsEnumerable() : part.Parts.Prepend(new Words(between)))]);
}
