using HealthNotes.Analysis.Checks;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Model;

/// <summary>What the check left out: with a reason, and without a word.</summary>
internal static class NotLookedAtBuilder
{
    public static NotLookedAt Build(PageContext context)
    {
        List<SkippedItem> skipped = [.. context.Items.Where(item => item.Item is Skipped).Select(Skip)];
        List<NoteItem> check = [.. context.Items.Where(item => context.Period.IsCheck(item.Entry)).Select(item => item.Item)];
        bool restOk = check.Any(item => item is RestOk);
        return new NotLookedAt(
            Shown<SkippedItem>.Last(skipped, PageLimits.ListItems), context.Period.Check is null ? [] : NotMentioned(context, check, restOk), restOk);
    }

    private static SkippedItem Skip(CurrentItem item)
    {
        var skip = (Skipped)item.Item;
        string site = SiteWords.Of(skip.Site);
        return new SkippedItem(item.Entry.Day, Wording.NameOf(skip.Item.Word) + (site.Length == 0 ? "" : " " + site), skip.Reason is null ? "" : NoteText.Field(skip.Reason.Text));
    }

    /// <summary>The parts and vitals of a whole check that its entry does not name. <c>else ok</c> speaks for parts, never for a measurement.</summary>
    private static List<string> NotMentioned(PageContext context, List<NoteItem> check, bool restOk)
    {
        HashSet<string> mentioned = [.. check.Select(item => item is Skipped skip ? skip.Item.Word : item.Word.Word)];
        return [.. CheckItems.For(context.Analysis.Pet)
            .Where(item => !mentioned.Contains(item.Word.Word) && !(restOk && !item.IsMeasured))
            .Select(item => Wording.NameOf(item.Word.Word).ToLowerInvariant())];
    }
}
