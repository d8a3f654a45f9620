using HealthNotes.Grammar.Items;

namespace HealthNotes.Features.Hover;

/// <summary>On a site: its names, and where it lies.</summary>
internal static class SiteHover
{
    public static string? At(HoverLine at)
    {
        Site? site = at.Item?.Site;
        return site is null ? null : Md.Join([Name(site), Side(site), Region(site), Number(site)]);
    }

    private static string Name(Site site)
    {
        string[] words = [NameOf(site.Side), site.Region?.Word.Replace('-', ' ') ?? (site.Number is null ? "" : "tooth"), $"{site.Number}"];
        return $"**{string.Join(' ', words.Where(word => word.Length > 0))}**";
    }

    private static string NameOf(Grammar.Items.Side side) => side switch
    {
        Grammar.Items.Side.None => "",
        Grammar.Items.Side.L => "left",
        Grammar.Items.Side.R => "right",
        Grammar.Items.Side.LF => "left front",
        Grammar.Items.Side.RF => "right front",
        Grammar.Items.Side.LH => "left hind",
        Grammar.Items.Side.RH => "right hind",
        Grammar.Items.Side.Mid => "midline",
        Grammar.Items.Side.Front => "both front",
        Grammar.Items.Side.Hind => "both hind",
        _ => "both sides",
    };

    private static string Side(Site site) =>
        site.Side is not (>= Grammar.Items.Side.L and <= Grammar.Items.Side.RH) ? "" : "Left and right are the pet's own.";

    private static string Region(Site site)
    {
        if (site.Region is not { } region)
        {
            return "";
        }

        string names = region.Synonyms.Count > 0 ? $" Also called: {string.Join(", ", region.Synonyms)}." : "";
        return $"{Md.Sentence(region.Definition)}{names}{Md.Source(region.Source)}";
    }

    private static string Number(Site site)
    {
        if (site.Number is not { } number)
        {
            return "";
        }

        return site.Region is not null ? $"Number {number} counted from the front." : Tooth.Describe(number);
    }
}
