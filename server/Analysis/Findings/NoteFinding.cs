using System.Collections.Immutable;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Analysis.Findings;

/// <summary>How strong a finding is, in rising order. <see cref="Error"/> stands apart: it is for what could not be read.</summary>
public enum FindingLevel
{
    /// <summary>Something to know.</summary>
    Info,

    /// <summary>Worth watching.</summary>
    Watch,

    /// <summary>A reason to phone the clinic.</summary>
    Call,

    /// <summary>Cannot wait.</summary>
    Urgent,

    /// <summary>Could not be read.</summary>
    Error,
}

/// <summary>Something a reader should know about one place in a note.</summary>
/// <param name="Rule">The stable name of the rule that found it; <c>hnote about</c> takes it.</param>
/// <param name="Level">How strong it is.</param>
/// <param name="Line">The index of the line it is about (from 0).</param>
/// <param name="Span">The exact characters meant.</param>
/// <param name="Found">What was found, in plain words. It compares and describes; it names no disease and no treatment.</param>
/// <param name="Source">The publication behind it, <c>common practice, no source</c>, <c>this project's own choice</c>, or the note format itself.</param>
/// <param name="Evidence">The indexes of the lines it rests on, in order; the line itself is among them.</param>
public sealed record NoteFinding(
    string Rule,
    FindingLevel Level,
    int Line,
    TextSpan Span,
    string Found,
    string Source,
    ImmutableArray<int> Evidence)
{
    /// <summary>What its level asks of the reader; empty where nothing is asked.</summary>
    public string Advice { get; init; } = "";

    /// <summary>What a reader may want to know besides; often empty.</summary>
    public string More { get; init; } = "";

    /// <summary>For what is urgent by its source and was lowered by the clinic's rules: that it was, why, and by whom; else empty.</summary>
    public string Overridden { get; init; } = "";

    /// <summary>All of it, as it is shown.</summary>
    public string Message => string.Join(' ', new[] { Found, Overridden, Advice, More }.Where(part => part.Length > 0));

    /// <summary>What it is about: of findings with one topic about one observation the strongest is shown. Empty for what could not be read.</summary>
    public string Topic { get; init; } = "";

    /// <summary>Of two that are equally strong, the one with the lower number is shown.</summary>
    public int Priority { get; init; }

    /// <summary>For what could not be read, the known word that was most likely meant.</summary>
    public string? Nearest { get; init; }

    /// <summary>For a line that was not understood, the whole line as it should be, where that is certain.</summary>
    public string? Corrected { get; init; }

    /// <summary>The same with more to know.</summary>
    public NoteFinding And(string more) => this with { More = $"{More} {more.TrimStart()}".Trim() };

    /// <summary>The same for one that asks nothing of the reader, or asks it in its own words.</summary>
    public NoteFinding WithoutAdvice() => this with { Advice = "" };
}
