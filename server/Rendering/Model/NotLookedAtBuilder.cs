using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Checks;

namespace HealthNotes.Rendering.Model;

/// <summary>What the check left out: with a reason, and without a word.</summary>
internal static class NotLookedAtBuilder
{
    public static NotLookedAt Build(PageContext context)
    {
        List<SkippedItem> skipped = [.. context.Items.Where(item => item.Item is Skipped).Select(Skip)];
        var coverage = new CheckCoverage(CheckItems.For(context.Analysis.Pet));
        CheckCoverage.Seen seen = context.Period.Current.Where(context.Period.IsCheck).Select(entry => coverage.In(entry.Entry)).Aggregate(default(CheckCoverage.Seen), (left, right) => left | right);
        return new NotLookedAt(
            Shown<SkippedItem>.Last(skipped, PageLimits.ListItems), context.Period.Check is null ? [] : [.. coverage.Named(coverage.Tell(seen).Missing).Select(item => Wording.NameOf(item.Word.Word).ToLowerInvariant())], seen.RestOk);
    }

    private static SkippedItem Skip(CurrentItem item)
    {
        var skip = (Skipped)item.Item;
        string site = SiteWords.Of(skip.Site);
        return new SkippedItem(item.Entry.Day, Wording.NameOf(skip.Item.Word) + (site.Length == 0 ? "" : " " + site), skip.Reason is null ? "" : NoteText.Field(skip.Reason.Text));
    }
}
