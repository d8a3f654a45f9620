using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

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
        return [.. NoteVocabulary.Default.LineWords.Terms
            .Where(word => word.Kind == WordKind.Vital ? IsAskedOf(word, context) : word.Kind == WordKind.Exam && !restOk)
            .Where(word => !mentioned.Contains(word.Word))
            .OrderBy(word => word.Order)
            .Select(word => Wording.NameOf(word.Word).ToLowerInvariant())];
    }

    /// <summary>Blood glucose is asked only of an animal on insulin; a pain score needs a scale that not every clinic has shown.</summary>
    private static bool IsAskedOf(LineWord vital, PageContext context) => vital.Word switch
    {
        "glucose" => context.Analysis.Pet.OnInsulin,
        "pain" => false,
        _ => true,
    };
}
