using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>What is offered at a drawn cursor.</summary>
internal static class Offered
{
    public static CompletionList At(string marked) => At(Cursor.In(marked));

    public static CompletionList At(Cursor at, UnitsShown units = UnitsShown.AsNoted) =>
        CompletionFeature.At(at.Document, at.Place, new FeatureSettings { Units = units });

    /// <summary>The labels, in the order they are listed.</summary>
    public static string[] Labels(string marked) => [.. At(marked).Items.OrderBy(item => item.SortKey, StringComparer.Ordinal).Select(item => item.Label)];

    /// <summary>The offer with this label.</summary>
    public static CompletionItem Item(string marked, string label)
    {
        CompletionItem? item = At(marked).Items.FirstOrDefault(i => i.Label == label);
        Assert.True(item is not null, $"`{label}` is not among: {string.Join(", ", Labels(marked))}");
        return item;
    }

    /// <summary>The text after the offer is taken.</summary>
    public static string Taking(string marked, string label) => Cursor.Apply(Cursor.In(marked).Document, [Item(marked, label).Edit]);
}
