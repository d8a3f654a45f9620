using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>What the writers said in their own words, and what could not be read.</summary>
internal static class TextBuilder
{
    /// <summary>The free text about the pet and of the current entries.</summary>
    public static Shown<FreeText> Texts(PageContext context)
    {
        List<FreeText> all = [.. context.Analysis.Note.Opening.Texts.Select(text => Text(context, null, PageWords.AboutThePet, text))];
        all.AddRange(context.Period.Current.SelectMany(entry => entry.Entry.Texts.Select(text => Text(context, entry.Day, PageWords.EntryTitle(entry.Day, entry.Entry.Head), text))));
        int room = PageLimits.AllFreeTextLength;
        List<FreeText> shown = [.. all.Take(PageLimits.ListItems).TakeWhile(text => (room -= text.Markdown.Length) >= 0)];
        return new Shown<FreeText>(shown, all.Count - shown.Count);
    }

    /// <summary>The lines with something that could not be read, or that cannot be right.</summary>
    public static NotUnderstood NotUnderstood(PageContext context)
    {
        ILookup<bool, int> lines = context.Problems.Order().ToLookup(context.IsCurrent);
        Shown<int> shown = Shown<int>.First([.. lines[true]], PageLimits.LinesNotUnderstood);
        return new NotUnderstood(
            new Shown<WrittenLine>([.. shown.Items.Select(context.Written)], shown.LeftOut),
            [.. lines[false].TakeLast(PageLimits.EvidenceLines).Select(line => line + 1)], lines[false].Count());
    }

    private static FreeText Text(PageContext context, DateOnly? day, string heading, FreeTextBlock block)
    {
        string clipped = NoteText.Clip(block.Markdown, PageLimits.FreeTextLength);
        return new FreeText(
            day, heading, block.BelongsTo is { } line ? context.Written(line).Text : null,
            NoteText.Block(clipped), clipped.Length < block.Markdown.Length);
    }
}
