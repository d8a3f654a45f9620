using HealthNotes.Analysis.Findings;

namespace HealthNotes.Rendering.Model;

/// <summary>What a vet should see first.</summary>
internal static class AttentionBuilder
{
    public static Attention Build(PageContext context)
    {
        List<NoteFinding> current = [];
        var older = new SortedDictionary<FindingLevel, int>();
        int notUnderstood = 0;
        foreach (NoteFinding finding in context.Analysis.Findings)
        {
            bool isCurrent = context.IsCurrent(finding.Line);
            if (finding.Level == FindingLevel.Error)
            {
                notUnderstood += isCurrent ? 1 : 0;
            }
            else if (finding.Level > FindingLevel.Info && isCurrent)
            {
                current.Add(finding);
            }
            else if (finding.Level > FindingLevel.Info)
            {
                older[finding.Level] = older.GetValueOrDefault(finding.Level) + 1;
            }
        }

        return new Attention(Listed(context, current, PageLimits.Findings), older, notUnderstood);
    }

    /// <summary>What is only to be known.</summary>
    public static Shown<FindingItem> ToKnow(PageContext context) => Listed(
        context, [.. context.Analysis.Findings.Where(f => f.Level == FindingLevel.Info && context.IsCurrent(f.Line))], PageLimits.ListItems);

    /// <summary>
    /// Strongest first, then latest day first, then in line order. The same thing found again and again is one item, at its
    /// latest.
    /// </summary>
    private static Shown<FindingItem> Listed(PageContext context, List<NoteFinding> findings, int most)
    {
        List<List<NoteFinding>> groups = [.. findings.GroupBy(f => SameThing(context, f))
            .Select(group => group.OrderByDescending(f => context.DayOf(f.Line)).ThenByDescending(f => f.Line).ToList())
            .OrderByDescending(group => group[0].Level).ThenByDescending(group => context.DayOf(group[0].Line)).ThenBy(group => group[0].Line)];
        Shown<List<NoteFinding>> shown = Shown<List<NoteFinding>>.First(groups, most);
        return new Shown<FindingItem>([.. shown.Items.Select(group => Item(context, group))], shown.LeftOut);
    }

    private static FindingItem Item(PageContext context, List<NoteFinding> group)
    {
        NoteFinding latest = group[0];
        Shown<int> lines = Shown<int>.Last(latest.Evidence, PageLimits.EvidenceLines);
        DateOnly? day = context.DayOf(latest.Line);
        return new FindingItem(
            latest.Level, day, Message(latest.Message),
            new Shown<WrittenLine>([.. lines.Items.Select(line => Without(day, context.Written(line)))], lines.LeftOut), latest.Source,
            Shown<DateOnly?>.First([.. group.Skip(1).Select(f => context.DayOf(f.Line))], PageLimits.EvidenceLines));
    }

    /// <summary>A line of the finding's own day need not say the day again.</summary>
    private static WrittenLine Without(DateOnly? day, WrittenLine line) => line.Day == day ? line with { Day = null } : line;

    /// <summary>
    /// What makes two findings one: the rule, the level, the thing and its place, and the word meant. The number meant is
    /// left out: a count above its line is the same matter whatever the count.
    /// </summary>
    private static (string Rule, FindingLevel Level, string Thing, string Word) SameThing(PageContext context, NoteFinding finding)
    {
        string word = finding.Span.In(context.Analysis.Note.Syntax.Lines[finding.Line].Text).ToString();
        return (finding.Rule, finding.Level, context.ThingAt(finding.Line), word.Any(char.IsAsciiDigit) ? "" : word.ToUpperInvariant());
    }

    /// <summary>A message may quote a line of the note; it is cleaned like one, with room for the words around it.</summary>
    private static string Message(string message) => NoteText.Block(message).Replace('\n', ' ');
}
