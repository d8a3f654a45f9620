using HealthNotes.Grammar.Items;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>A site as a person says it: <c>left flank</c>, <c>right gland 3</c>, <c>tooth 208</c>.</summary>
internal static class SiteWords
{
    /// <summary>The words; empty when no site is written.</summary>
    public static string Of(Site? site, FindingTag? tag = null)
    {
        if (site is null)
        {
            return "";
        }

        if (site is { Side: Side.Both or Side.Front or Side.Hind, Region: { } pair, Number: null })
        {
            string plural = pair.Word.Replace('-', ' ');
            plural = plural.EndsWith('s') ? plural : plural + "s";
            return string.Join(' ', new[] { site.Side == Side.Both ? PageWords.BothOf(plural) : $"{PageWords.NameOf(site.Side)} {plural}", tag is null ? "" : "@" + NoteText.Field(tag.Name) }.Where(word => word.Length > 0));
        }

        string[] words =
        [
            PageWords.NameOf(site.Side),
            site.Region?.Word.Replace('-', ' ') ?? "",
            site.Number is { } number ? $"{number}" : "",
            tag is null ? "" : "@" + NoteText.Field(tag.Name),
        ];
        return string.Join(' ', words.Where(word => word.Length > 0));
    }

    /// <summary>True for a side without a part: the name of the part follows it (<c>left ear</c>).</summary>
    public static bool IsSideOnly(Site? site) => site is { Region: null, Number: null, Side: >= Side.L and <= Side.RH };

    /// <summary>Where a lump, a wound or a node lies, as it was last written.</summary>
    public static string Of(LumpLife life) => Of(life.Site, life.Last.Item!.Tag);
}
