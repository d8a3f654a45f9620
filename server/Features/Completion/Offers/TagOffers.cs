using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Tags used before: the same tag each time, or a finding cannot be followed.</summary>
internal static class TagOffers
{
    public static IEnumerable<Offer> For(LineState line, LineWord word, int group)
    {
        if (line.Has(TokenKind.Tag) || !(line.Has(TokenKind.Site) || line.At.Typed.StartsWith('@')))
        {
            yield break;
        }

        string[] sites = [.. SiteNames(line)];
        foreach (EarlierPlace earlier in EarlierPlace.Of(line.Note, word, pointsBack: line.About is not null))
        {
            if (earlier.Tag is null || (sites.Length > 0 && !sites.Contains(earlier.Site.Name)))
            {
                continue;
            }

            yield return new Offer("@" + earlier.Tag, CompletionKind.Tag, earlier.Gone ? group + 1 : group, sites.Length > 0 ? earlier.Last : $"{earlier.Site.Name}, {earlier.Last}")
            {
                Spellings = [earlier.Tag],
            };
        }
    }

    private static IEnumerable<string> SiteNames(LineState line) => line.Read.Item?.Site is { } site ? [site.Name] : line.Texts(TokenKind.Site);
}
