using System.Globalization;
using HealthNotes.Analysis.Rules;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the days of home care.</content>
internal static partial class PageWords
{
    public const string DaysOfCare = "Home care, day by day";
    public const string DaysCaption = "What was written of each day. \"Not noted\" is planned and not written down: it does not say that it was missed. An empty cell: nothing written.";
    public const string DosesColumn = "Doses";
    public const string MealsColumn = "Meals";
    public const string WaterColumn = "Water";
    public const string UrineColumn = "Urine";
    public const string StoolColumn = "Stool";
    public const string VomitColumn = "Vomit";
    public const string OtherColumn = "Other";
    public const string GlucoseColumn = "Glucose";

    public static string DaysWithoutNote(DateOnly from, DateOnly to) =>
        from == to ? $"{Iso(from)}: no note" : $"{Iso(from)} to {Iso(to)}: {to.DayNumber - from.DayNumber + 1:N0} days without a note";

    public static string Doses(int given, int missed, int notNoted)
    {
        string[] parts = [given == 0 ? "" : $"{given} given", missed == 0 ? "" : $"{missed} missed", notNoted == 0 ? "" : $"{notNoted} not noted"];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    public static string MealsEaten(decimal meals) => meals == 0 ? "none eaten" : $"{Math.Round(meals, 2).ToString("0.##", CultureInfo.InvariantCulture)} eaten";

    public static string WaterOfDay(string amount, decimal? perKilogram) => perKilogram is { } share ? $"{amount} ({Wording.Round(share, 0)} mL/kg)" : amount;

    public static string TimesShort(int times) => $"{times}\u00D7";

    public static string WithWords(string count, IEnumerable<string> words)
    {
        string list = string.Join(", ", words);
        return list.Length == 0 ? count : $"{count} {list}".TrimStart();
    }

    public static string OtherEvents(int cough, int sneeze, int seizures)
    {
        string[] parts = [seizures == 0 ? "" : $"seizure {TimesShort(seizures)}", cough == 0 ? "" : $"cough {TimesShort(cough)}", sneeze == 0 ? "" : $"sneeze {TimesShort(sneeze)}"];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }
}
