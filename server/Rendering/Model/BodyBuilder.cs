using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>
/// Lumps, wounds, sore places, and nodes that were measured: each once, with its sizes over time. Those of earlier entries stay
/// on the list; those that are gone come last.
/// </summary>
internal static class BodyBuilder
{
    private const int SizesShown = 5;
    private const decimal Percent = 100;
    private static readonly string[] Words = ["lump", "wound", "pain-site", "node"];

    public static Shown<BodyFinding> Build(PageContext context)
    {
        List<LumpLife> lives = [.. Words.SelectMany(word => context.Analysis.Record.All(word)).SelectMany(course => LumpLife.AllOf(course)).Where(life => life.Key.Word != "node" || !life.Sizes.IsEmpty)];
        var known = lives.SelectMany(life => life.Lines).Select(line => line.Line).ToHashSet();
        List<BodyFinding> rows = [.. lives
            .OrderBy(life => life.Ended is not null).ThenByDescending(life => context.IsCurrent(life.Last.Line)).ThenBy(life => life.Last.Item!.Word.Order).ThenByDescending(life => life.Last.Day).ThenBy(life => life.Last.Line)
            .Select((life, index) => Of(context, life, index + 1))];

        // an entry whose day could not be read is in no course, and is still shown
        foreach (DatedEntry entry in context.Period.Earlier.Concat(context.Period.Current))
        {
            rows.AddRange(entry.Entry.Items.Where(item => item.Value is Finding && !known.Contains(item.Line))
                .Select(item => Of(context, entry.Day, item.Line, (Finding)item.Value, rows.Count + 1)).ToList());
        }

        return Shown<BodyFinding>.First(rows, PageLimits.TableRows);
    }

    private static BodyFinding Of(PageContext context, LumpLife life, int number)
    {
        string kind = Wording.NameOf(life.Key.Word);
        string place = SiteWords.Of(life);
        string last = life.LastSize is { } size ? ExaminationBuilder.Size(context, size) : "";
        return new BodyFinding(
            new BodyMark(number, life.Key.Word, PageWords.MarkInWords(number, kind, place, last), life.Ended is not null || life.Site is null ? [] : [.. BodySpot.Of(life.Site, context.Analysis.Pet.Species)]),
            kind, place, Sizes(context, life), Change(context, life), Seen(context, life), State(context, life), life.Ended is not null, life.First.Day, life.Last.Day, context.LevelOf(life.Last.Line));
    }

    private static BodyFinding Of(PageContext context, DateOnly? day, int line, Finding finding, int number)
    {
        string kind = Wording.NameOf(finding.Word.Word);
        string place = SiteWords.Of(finding.Site, finding.Tag);
        string size = finding.Size is null ? "" : ExaminationBuilder.Size(context, finding.Size);
        return new BodyFinding(
            new BodyMark(number, finding.Word.Word, PageWords.MarkInWords(number, kind, place, size), [.. BodySpot.Of(finding.Site, context.Analysis.Pet.Species)]),
            kind, place, size.Length == 0 ? [] : [size], "", ExaminationBuilder.Seen(context, line, finding), "", false, day, day, context.LevelOf(line));
    }

    private static List<string> Sizes(PageContext context, LumpLife life)
    {
        LumpSize[] all = [.. life.SizeOfEachDay];
        List<string> shown = [.. all.TakeLast(SizesShown).Select(size => PageWords.SizeOn(ExaminationBuilder.Size(context, size), size.Day))];
        if (all.Length > SizesShown)
        {
            // the first size is what all later ones are held against
            shown.Insert(0, PageWords.SizeOn(ExaminationBuilder.Size(context, all[0]), all[0].Day));
            if (all.Length > SizesShown + 1)
            {
                shown.Insert(1, PageWords.EarlierSizes(all.Length - SizesShown - 1));
            }
        }

        return shown;
    }

    private static string Change(PageContext context, LumpLife life)
    {
        LumpSize[] sizes = [.. life.SizeOfEachDay];
        return sizes.Length > 1 && sizes[0].Typical is > 0 and { } first && sizes[^1].Typical is { } last
            ? PageWords.ChangedBy(last - first, context.Units.Difference(last - first, "mm"), (last - first) * Percent / first, sizes[0].HandLow <= (sizes[^1].HandHigh ?? decimal.MaxValue) && sizes[^1].HandLow <= (sizes[0].HandHigh ?? decimal.MaxValue))
            : "";
    }

    private static string Seen(PageContext context, LumpLife life)
    {
        string seen = ExaminationBuilder.Seen(context, life.Last.Line, life.Last.Item!);
        VetLook? sampled = life.Looks.LastOrDefault(look => look.Sampled);
        return sampled is null || sampled.Noted == life.Last ? seen : string.Join("; ", new[] { seen, PageWords.EndedOn(PageWords.Sampled, sampled.Day) }.Where(part => part.Length > 0));
    }

    private static string State(PageContext context, LumpLife life) =>
        life.Ended is { } ended ? PageWords.EndedOn((life.EndWord ?? "").Replace('-', ' '), ended.Day)
        : context.Period.Check?.Day is { } check && life.Last.Day < check ? PageWords.NotNotedInCheck(check)
        : "";
}
