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

    /// <summary>Strongest first, then latest day first, then in line order.</summary>
    private static Shown<FindingItem> Listed(PageContext context, List<NoteFinding> findings, int most)
    {
        Shown<NoteFinding> shown = Shown<NoteFinding>.First(
            [.. findings.OrderByDescending(f => f.Level).ThenByDescending(f => context.DayOf(f.Line)).ThenBy(f => f.Line)], most);
        return new Shown<FindingItem>([.. shown.Items.Select(f => Item(context, f))], shown.LeftOut);
    }

    private static FindingItem Item(PageContext context, NoteFinding finding)
    {
        Shown<int> lines = Shown<int>.Last(finding.Evidence, PageLimits.EvidenceLines);
        return new FindingItem(
            finding.Level, context.DayOf(finding.Line), Message(finding.Message),
            new Shown<WrittenLine>([.. lines.Items.Select(context.Written)], lines.LeftOut), finding.Source);
    }

    /// <summary>A message may quote a line of the note; it is cleaned like one, with room for the words around it.</summary>
    private static string Message(string message) => NoteText.Block(message).Replace('\n', ' ');
}
