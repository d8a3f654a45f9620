using System.Xml.Linq;
using HealthNotes.Analysis.Danger;
using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What cannot wait, the usual cautions, and how to type the sheet up.</summary>
internal static class SheetCautions
{
    /// <summary>Cautions that stand beside the part they are about already.</summary>
    private static readonly string[] SaidBeside = ["lump", "thermometer"];

    /// <summary>What cannot wait, the usual cautions, and how to type the sheet up.</summary>
    public static IEnumerable<XElement> Of(PageContext context)
    {
        Caution[] urgent = Urgent(context);
        Caution[] cautions = [.. ClinicalTables.Default.CautionsFor(context.Analysis.Pet.Species).Where(caution => !SaidBeside.Contains(caution.Key))];
        return
        [
            Tag.Of("div.words.cautions", Tag.Of("div", List(PageWords.SheetPhoneNow, urgent)), Tag.Of("div", List(PageWords.Cautions, cautions))), Sources(urgent.Concat(cautions)),
            Typing(PageWords.SheetTyping, "hnote new check FILE"),
        ];
    }

    /// <summary>What cannot wait, in two columns.</summary>
    public static XElement OfUrgent(PageContext context) => Tag.Of("div.urgent.cautions", List(PageWords.SheetPhoneNow, Urgent(context), "h2"), Sources(Urgent(context)));

    /// <summary>How a sheet is typed up.</summary>
    public static XElement Typing(string how, string command) => Tag.Of("p.typing", Tag.Of("strong", PageWords.SheetTypingLead), " ", how, " ", Tag.Of("code", command));

    private static Caution[] Urgent(PageContext context) => [.. PhoneNow.Printed(context.Analysis.Pet.Species, context.Analysis.Pet.Male)];

    private static IEnumerable<XElement> List(string heading, Caution[] rows, string rank = "h3") => Tag.List(heading, [.. rows.Select(row => row.Text)], rank);

    private static XElement Sources(IEnumerable<Caution> rows) => Tag.Of("p.sources", PageWords.SheetSources(rows.SelectMany(row => row.Source.Split("; ")).Distinct()));
}
