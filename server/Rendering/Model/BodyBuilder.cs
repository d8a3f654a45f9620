using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Model;

/// <summary>Lumps, wounds and sore places, each once, as it was at its latest note. Those of earlier entries stay on the list.</summary>
internal static class BodyBuilder
{
    public static Shown<BodyFinding> Build(PageContext context)
    {
        var seen = new Dictionary<(string, string, string?), (DateOnly? First, DateOnly? Last, int Line, Finding Finding)>();
        foreach (DatedEntry entry in context.Period.Earlier.Concat(context.Period.Current))
        {
            foreach (Placed<NoteItem> item in entry.Entry.Items)
            {
                if (item.Value is Finding finding)
                {
                    (string, string, string?) key = (finding.Word.Word, finding.Site.Name, finding.Tag?.Name);
                    DateOnly? first = seen.TryGetValue(key, out (DateOnly? First, DateOnly?, int, Finding) before) ? before.First : entry.Day;
                    seen[key] = (first, entry.Day, item.Line, finding);
                }
            }
        }

        return Shown<BodyFinding>.First(
            [.. seen.Values.OrderByDescending(s => context.IsCurrent(s.Line)).ThenBy(s => s.Finding.Word.Order).ThenByDescending(s => s.Last).ThenBy(s => s.Line)
                .Select(s => Row(context, s.First, s.Last, s.Line, s.Finding))],
            PageLimits.TableRows);
    }

    private static BodyFinding Row(PageContext context, DateOnly? first, DateOnly? last, int line, Finding finding)
    {
        string text = context.Analysis.Note.Syntax.Lines[line].Text;
        return new BodyFinding(
            Wording.NameOf(finding.Word.Word).Replace('-', ' '), SiteWords.Of(finding.Site, finding.Tag),
            finding.Size is null ? "" : NoteText.Field(finding.Size.Span.In(text).ToString()),
            finding.Size is null ? "" : ExaminationBuilder.Size(context, finding.Size),
            ExaminationBuilder.Seen(context, finding.Words), first, last, context.LevelOf(line));
    }
}
