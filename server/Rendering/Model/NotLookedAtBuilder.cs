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
        DatedEntry? check = context.Period.Check;
        bool restOk = check is not null && check.Entry.Items.Any(item => item.Value is RestOk);
        return new NotLookedAt(
            Shown<SkippedItem>.Last(skipped, PageLimits.ListItems), check is null ? [] : NotMentioned(context, check.Entry, restOk), restOk);
    }

    private static SkippedItem Skip(CurrentItem item)
    {
        var skip = (Skipped)item.Item;
        string site = SiteWords.Of(skip.Site);
        return new SkippedItem(item.Entry.Day, Wording.NameOf(skip.Item.Word) + (site.Length == 0 ? "" : " " + site), skip.Reason is null ? "" : NoteText.Field(skip.Reason.Text));
    }

    /// <summary>The parts and vitals of a whole check that its entry does not name. <c>else ok</c> speaks for parts, never for a measurement.</summary>
    private static List<string> NotMentioned(PageContext context, Entry check, bool restOk)
    {
        HashSet<string> mentioned = [.. check.Items.Select(item => item.Value is Skipped skip ? skip.Item.Word : item.Value.Word.Word)];
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
