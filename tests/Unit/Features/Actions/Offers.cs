using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

/// <summary>The one place where tests of actions call the feature.</summary>
internal static class Offers
{
    /// <summary>Everything that is offered at the drawn cursor.</summary>
    public static IReadOnlyList<ActionOffer> At(string marked)
    {
        Cursor at = Cursor.In(marked);
        return ActionFeature.In(at.Document, at.Range, FeatureSettings.Default);
    }

    /// <summary>The titles of the offers of one kind, in order; the preferred one has a star.</summary>
    public static string[] Titles(string marked, string id) =>
        [.. At(marked).Where(offer => offer.Id == id).Select(offer => offer.Title + (offer.IsPreferred ? " *" : ""))];

    /// <summary>
    /// Takes a quick fix and compares the whole text with what is expected, so that nothing else has changed. The findings it
    /// says it fixes must be gone, and nothing that could be read before may now be flagged as not understood.
    /// </summary>
    public static void Fix(string marked, string id, string expected, int which = 0)
    {
        Cursor at = Cursor.In(marked);
        ActionOffer offer = Pick(at, id, which);
        Assert.Equal(ActionKind.QuickFix, offer.Kind);
        Document after = Applied(at.Document, offer, expected);
        Assert.NotEmpty(offer.Fixes);
        foreach (FixedFinding gone in offer.Fixes)
        {
            NoteFinding finding = Assert.Single(at.Document.Analysis.Findings, f => f.Rule == gone.Rule && f.Line == gone.Line && f.Span == gone.Span);
            Assert.True(Count(after, finding) < Count(at.Document, finding), $"still there: {finding.Message}");
        }

        foreach (NoteFinding finding in after.Analysis.Findings.Where(f => f.Level == FindingLevel.Error))
        {
            Assert.True(Count(after, finding) <= Count(at.Document, finding), $"new: {finding.Message}");
        }
    }

    /// <summary>Takes a rewrite and compares the whole text; nothing new may be flagged as not understood.</summary>
    public static void Rewrite(string marked, string id, string expected, int which = 0)
    {
        Cursor at = Cursor.In(marked);
        ActionOffer offer = Pick(at, id, which);
        Assert.Equal(ActionKind.Rewrite, offer.Kind);
        Assert.Empty(offer.Fixes);
        Document after = Applied(at.Document, offer, expected);
        Assert.True(Errors(after) <= Errors(at.Document), "something is not understood now");
    }

    /// <summary>Checks that nothing of this kind is offered.</summary>
    public static void None(string marked, string id) => Assert.Empty(Titles(marked, id));

    /// <summary>The text after an offer is taken.</summary>
    public static string Applied(string marked, string id) => Cursor.Apply(Cursor.In(marked).Document, Pick(Cursor.In(marked), id, 0).Edits);

    private static ActionOffer Pick(Cursor at, string id, int which)
    {
        ActionOffer[] all = [.. ActionFeature.In(at.Document, at.Range, FeatureSettings.Default)];
        ActionOffer[] offers = [.. all.Where(offer => offer.Id == id)];
        Assert.True(which < offers.Length, $"offered are: {string.Join(", ", all.Select(offer => $"{offer.Id} \"{offer.Title}\""))}");
        return offers[which];
    }

    private static Document Applied(Document document, ActionOffer offer, string expected)
    {
        IEnumerable<DocumentEdit> edits = offer.Key is { } key ? ActionFeature.Resolve(document, key) : offer.Edits;
        string text = Cursor.Apply(document, edits);
        Assert.Equal(expected, text);
        return Document.Open(document.Uri, 2, text, document.Today);
    }

    private static int Count(Document document, NoteFinding like) => document.Analysis.Findings.Count(f => f.Rule == like.Rule && f.Message == like.Message);

    private static int Errors(Document document) => document.Analysis.Findings.Count(f => f.Level == FindingLevel.Error);
}
