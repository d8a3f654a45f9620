namespace HealthNotes.Features.Hover;

/// <summary>What the number of a tooth says, by the modified Triadan system: a quarter of the mouth, and the place counted from the middle.</summary>
internal static class Tooth
{
    private const string Source = "WikiVet, modified Triadan system";

    public static string Describe(int number)
    {
        int quarter = number / 100;
        int place = number % 100;
        string side = ((quarter - 1) % 4) switch { 0 => "upper right", 1 => "upper left", 2 => "lower left", _ => "lower right" };
        string kind = place switch { <= 3 => "incisor", 4 => "canine", <= 8 => "premolar", _ => "molar" };
        string milk = quarter > 4 ? "milk " : "";
        return $"{char.ToUpperInvariant(side[0])}{side[1..]}, {milk}{kind}: place {place} counted from the middle.{Md.Source(Source)}";
    }
}
