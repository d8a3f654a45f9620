using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>An item of the current period with its entry.</summary>
internal sealed record CurrentItem(DatedEntry Entry, int Line, NoteItem Item)
{
    /// <summary>The time of its line, else of its entry.</summary>
    public TimeOnly? Time => Item.Head.Time ?? Entry.Entry.Head.Time;
}

/// <summary>What every section is built from: the analysis, its period, and quick ways to look things up by line.</summary>
internal sealed class PageContext
{
    private readonly Dictionary<int, FindingLevel> strongest = [];
    private readonly Dictionary<(int Line, NoteItem Item), FindingLevel> strongestOfMany = new(EqualityComparer<(int Line, NoteItem Item)>.Create(
        (one, other) => one.Line == other.Line && ReferenceEquals(one.Item, other.Item), one => HashCode.Combine(one.Line, RuntimeHelpers.GetHashCode(one.Item))));
    private readonly HashSet<int> currentEntries;
    private readonly HashSet<int> problems;
    private readonly Dictionary<int, DateOnly?> days;

    public PageContext(NoteAnalysis analysis, PageOptions options)
    {
        Analysis = analysis;
        Options = options;
        Period = Period.Of(analysis);
        Units = new ShownUnits(analysis.Pet.ShowUsUnits);
        currentEntries = [.. Period.Current.Select(e => e.Entry.Line)];
        days = Period.Current.Concat(Period.Earlier).ToDictionary(e => e.Entry.Line, e => e.Day);
        Items = [.. Period.Current.SelectMany(e => e.Entry.Items.Select(item => new CurrentItem(e, item.Line, item.Value)))];
        problems = [.. analysis.Findings.Where(f => f.Level == FindingLevel.Error).Select(f => f.Line)];
        foreach (NoteFinding finding in analysis.Findings.Where(f => f.Level != FindingLevel.Error))
        {
            strongest[finding.Line] = (FindingLevel)Math.Max((int)finding.Level, (int)strongest.GetValueOrDefault(finding.Line));
            if (analysis.Note.Syntax.Lines[finding.Line].Items is { Length: > 1 } several && Observations.At(several, finding.Span) is { } meant)
            {
                strongestOfMany[(finding.Line, meant)] = (FindingLevel)Math.Max((int)finding.Level, (int)strongestOfMany.GetValueOrDefault((finding.Line, meant)));
            }
        }
    }

    public NoteAnalysis Analysis { get; }

    public PageOptions Options { get; }

    public Period Period { get; }

    public ShownUnits Units { get; }

    /// <summary>The items of the current period, by day and then line.</summary>
    public ImmutableArray<CurrentItem> Items { get; }

    /// <summary>The strongest finding about a line, or null.</summary>
    public FindingLevel? LevelOf(int line) => strongest.TryGetValue(line, out FindingLevel level) ? level : null;

    /// <summary>The strongest finding about an item; of several in one line only its own count.</summary>
    public FindingLevel? LevelOf(CurrentItem item) => Analysis.Note.Syntax.Lines[item.Line].Items.Length < 2 ? LevelOf(item.Line)
        : strongestOfMany.TryGetValue((item.Line, item.Item), out FindingLevel level) ? level : null;

    /// <summary>The lines with something that could not be read, or cannot be right.</summary>
    public IReadOnlyCollection<int> Problems => problems;

    /// <summary>True when something in a line could not be read, or cannot be right.</summary>
    public bool HasProblem(int line) => problems.Contains(line);

    /// <summary>A line as it was written, without the blanks around it.</summary>
    public WrittenLine Written(int line) => new(line + 1, DayOf(line), NoteText.Line(Analysis.Note.Syntax.Lines[line].Text));

    /// <summary>True for lines of the current period, and of the opening, which always holds.</summary>
    public bool IsCurrent(int line) => Analysis.Note.EntryAt(line) is not { } entry || currentEntries.Contains(entry.Line);

    /// <summary>The day of the entry that a line stands in; null in the opening.</summary>
    public DateOnly? DayOf(int line) => Analysis.Note.EntryAt(line) is { } entry ? days[entry.Line] : null;
}
