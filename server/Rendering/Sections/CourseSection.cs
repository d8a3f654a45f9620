using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>The medicines given before the period, each with its courses by month.</summary>
internal static class CourseSection
{
    /// <summary>Doses no further apart are of one course (common practice, no source).</summary>
    private const int GapDays = 31;

    private static readonly string[] ActWords = ["worming", "flea-tick"];

    public static Section? Write(PageContext context)
    {
        PetRecord record = context.Analysis.Record;
        string[] medicines = [.. MedicineOrder.All(record).Select(order => order.Medicine).Concat(record.All("gave").Select(course => course.Key.Detail)).Concat(Treatments(record).Select(act => act.Medicine)).Distinct()];
        string[] told =
        [
            .. medicines.Select(medicine => (medicine, courses: Of(record, medicine).Where(course => course.To < (context.Period.From ?? DateOnly.MaxValue)).ToArray()))
                .Where(one => one.courses.Length > 0).OrderBy(one => one.courses[^1].To).TakeLast(PageLimits.ListItems)
                .Select(one => PageWords.Courses(NoteText.Field(NameOf(record, one.medicine)), one.courses.TakeLast(PageLimits.EvidenceLines))),
        ];
        return Section.Of("courses", PageWords.EarlierCourses, Block.Paragraph(told.Length == 0 ? "" : string.Join("; ", told) + "."));
    }

    /// <summary>The stretches in which it was planned or given, in order.</summary>
    private static List<(DateOnly From, DateOnly To)> Of(PetRecord record, string medicine)
    {
        List<(DateOnly From, DateOnly To)> courses = [];
        foreach ((DateOnly from, DateOnly to) in MedicineOrder.Of(medicine, record).Where(order => order.From > DateOnly.MinValue).Select(order => (order.From, To: order.EndDay ?? record.Today))
            .Concat(record.Of(CourseKey.Doses("gave", medicine)).Lines.Select(line => line.Day).Concat(Treatments(record).Where(act => act.Medicine == medicine).Select(act => act.Day)).Select(day => (From: day, To: day))).OrderBy(one => one.From))
        {
            if (courses.Count > 0 && from.DayNumber - courses[^1].To.DayNumber <= GapDays)
            {
                courses[^1] = (courses[^1].From, to > courses[^1].To ? to : courses[^1].To);
            }
            else
            {
                courses.Add((from, to));
            }
        }

        return courses;
    }

    /// <summary>Treatments against parasites that name a medicine: a dose by another word.</summary>
    private static IEnumerable<(string Medicine, DateOnly Day)> Treatments(PetRecord record) => ActWords.SelectMany(word => record.All(word)).SelectMany(course => course.Lines)
        .Where(line => line.Item is Act { Name: not null }).Select(line => (CourseKey.MedicineName(line.Item!.Name!.Text), line.Day));

    private static string NameOf(PetRecord record, string medicine) => MedicineOrder.Of(medicine, record).LastOrDefault()?.Plan.Medicine.Text
        ?? (record.Of(CourseKey.Doses("gave", medicine)).Last?.Item as DoseEvent)?.Medicine.Text ?? medicine;
}
