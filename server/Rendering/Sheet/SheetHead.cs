using HealthNotes.Analysis;
using HealthNotes.Analysis.Problems;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>Who is looked at, when and by whom; whom to phone, and from where on.</summary>
internal static class SheetHead
{
    /// <summary>The pet's name, as long as it fits.</summary>
    public static string NameOf(NoteAnalysis analysis) =>
        analysis.Pet.Name is { Length: > 0 } given ? SheetLimits.Cut(NoteText.Field(given), SheetLimits.NameLength) : PageWords.PetWithoutName;

    /// <summary>Where day and name are written.</summary>
    public static Paragraph Fill { get; } = new((Prose)PageWords.SheetDay + " " + Prose.Blank("line") + " " + PageWords.SheetBy + " " + Prose.Blank("line"), "fill");

    /// <summary>Who it is, whom to phone, and from where on.</summary>
    public static IEnumerable<Block> Of(PageContext context)
    {
        NoteAnalysis analysis = context.Analysis;
        string[] about = [PageWords.NameOf(analysis.Pet.Species), PageWords.Sex(analysis.Pet.Male, analysis.Pet.Neutered)?.ToLowerInvariant() ?? "", analysis.Pet.AgeOn(analysis.Today)?.ToString() ?? ""];
        string phone = string.Join(", ", Texts(context, "clinic").Concat(Texts(context, "phone")));
        string[] limits = [.. Limits(context)];
        yield return new Paragraph(
            (Prose)string.Join(", ", about.Where(part => part.Length > 0)) + Said(PageWords.SheetOwner, Texts(context, "owner")) + Said(PageWords.SheetChip, Texts(context, "chip")) + Prose.Blank("break")
            + Said(PageWords.SheetKnown, Texts(context, "known")) + Said(PageWords.SheetAllergies, Texts(context, "allergy"), PageWords.SheetNoneKnown) + Said(PageWords.SheetMedicines, Medicines(context), PageWords.SheetNoneNoted),
            "about");
        yield return new Paragraph(Prose.Strong(PageWords.SheetClinic) + " " + (phone.Length == 0 ? Prose.Blank("line long") : Telephone.Of(phone)), "phone");
        if (limits.Length > 0)
        {
            yield return new Paragraph(Prose.Strong(PageWords.SheetLimitsOf) + $" {string.Join("; ", limits.Take(SheetLimits.ClinicLimits))}{(limits.Length > SheetLimits.ClinicLimits ? $"; {PageWords.SheetMore(limits.Length - SheetLimits.ClinicLimits)}" : "")}", "limits");
        }
    }

    /// <summary>Every limit of the clinic, in the unit that is counted.</summary>
    public static IEnumerable<string> Limits(PageContext context) => context.Analysis.Record.Facts.CallIfs.Select(line => line.Fact.Fact.Vital.Word).Distinct()
        .SelectMany(word => context.Analysis.Record.All(word).DefaultIfEmpty(new Course(new CourseKey(word, word == "rr" ? "asleep" : "any"), [])).SelectMany(course => LimitsOf(context, course).Select(limit => $"{NameOf(course)} {limit}"))).Distinct();

    /// <summary>The limits of one vital.</summary>
    public static IEnumerable<string> LimitsOf(PageContext context, Course course) =>
        ClinicWords.Limits(context.Analysis.Record, course).Select(limit => ClinicLimit.Words(context.Units, course, limit.Limit, limit.Above, UnitOf(course), limit.InARow, onSheet: true));

    private static string NameOf(Course course) => PageWords.ChartOf(course.Key.Word, course.Key.Word == "temp" ? "" : course.Key.Detail).ToLowerInvariant();

    private static string UnitOf(Course course) => course.Last?.Reading?.Value.Unit ?? course.Key.Word switch { "hr" or "rr" => "/min", "temp" => "Cel", "weight" => "kg", "glucose" => "mmol/L", "crt" => "s", _ => "" };

    private static IEnumerable<string> Medicines(PageContext context)
    {
        string[] all = [.. MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(order => SheetLimits.Cut($"{NoteText.Field(order.Plan.Medicine.Text)} {PageWords.DoseInWords(order.Plan)}".TrimEnd(), SheetLimits.FactLength))];
        return all.Length <= SheetLimits.Medicines ? all : all.TakeLast(SheetLimits.Medicines).Append(PageWords.SheetMore(all.Length - SheetLimits.Medicines));
    }

    private static Prose Said(string label, IEnumerable<string> texts, string none = "") =>
        string.Join("; ", texts) is { Length: > 0 } text || (text = none).Length > 0 ? " " + Prose.Strong(label) + $" {text}." : Prose.Empty;

    private static IEnumerable<string> Texts(PageContext context, string word) =>
        context.Analysis.Note.Facts<TextFact>(context.Analysis.Today).Where(fact => fact.Fact.Word.Word == word).Select(fact => NoteText.Field(fact.Fact.Text.Text)).TakeLast(SheetLimits.FactsOfAKind)
            .DefaultIfEmpty(context.Analysis.Note.ClinicText(word) is { } text ? NoteText.Field(text) : "").Where(text => text.Length > 0)
            .Select(text => SheetLimits.Cut(text, SheetLimits.FactLength));
}
