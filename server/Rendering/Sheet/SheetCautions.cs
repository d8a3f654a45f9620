using HealthNotes.Analysis.Danger;
using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What cannot wait, the usual cautions, and how to type the sheet up.</summary>
internal static class SheetCautions
{
    /// <summary>Cautions that stand beside the part they are about already.</summary>
    private static readonly string[] SaidBeside = ["lump", "thermometer"];

    /// <summary>What cannot wait, the usual cautions, and how to type the sheet up.</summary>
    public static IEnumerable<Block> Of(PageContext context)
    {
        Caution[] urgent = Urgent(context);
        Caution[] cautions = [.. ClinicalTables.Default.CautionsFor(context.Analysis.Pet.Species).Where(caution => !SaidBeside.Contains(caution.Key))];
        return [new Group("words cautions", [List("now", PageWords.SheetPhoneNow, urgent), List("care", PageWords.Cautions, cautions)]), Sources(urgent.Concat(cautions)), Typing(PageWords.SheetTyping, "hnote new check FILE")];
    }

    /// <summary>What cannot wait, in two columns.</summary>
    public static Group OfUrgent(PageContext context) => new("urgent cautions", [List("now", PageWords.SheetPhoneNow, Urgent(context)), Sources(Urgent(context))]);

    /// <summary>How a sheet is typed up.</summary>
    public static Paragraph Typing(string how, string command) => new(Prose.Strong(PageWords.SheetTypingLead) + " " + how + " " + Prose.Quote(command), "typing");

    private static Caution[] Urgent(PageContext context) => [.. PhoneNow.Printed(context.Analysis.Pet.Species, context.Analysis.Pet.Male)];

    private static Section List(string key, string heading, Caution[] rows) => Section.Of(key, heading, Block.List(rows.Select(row => (Prose)row.Text)))!;

    private static Paragraph Sources(IEnumerable<Caution> rows) => new(PageWords.SheetSources(rows.SelectMany(row => row.Source.Split("; ")).Distinct()), "sources");
}
