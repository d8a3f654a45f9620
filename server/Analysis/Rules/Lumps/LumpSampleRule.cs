using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// The published rule of size and time for having a mass sampled: 1 cm or more, there for a month. Something to know once a
/// vet took a sample, knows the lump, or looked at it when it was as large already.
/// </summary>
public sealed class LumpSampleRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("lump-sample", "seen", 4);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "lump";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (LumpLife.Of(course) is not { Ended: null, Last.Item: Finding lump, LastSize: { } size } life || MammaryLumpRule.IsMammary(lump)
            || !IsLarge(size) || life.Last.Day.DayNumber - life.First.Day.DayNumber < LumpNumbers.Default["sample-days"])
        {
            yield break;
        }

        bool us = at.Facts.Pet.ShowUsUnits;
        (string How, int Line)? seen = SeenBy(life) ?? (KnownFinding.For(at.Facts, lump, life.Last.Day) is { } known ? (KnownFinding.Say(known), known.Line) : null);
        FindingLevel level = seen is null ? FindingLevel.Call : FindingLevel.Info;
        string message = $"Lump {life.Name}: {SizeWording.WithDay(size, us)}, there since {life.First.Day:yyyy-MM-dd} at least. "
            + (seen is { } how ? how.How : $"Published advice is to have a lump of 1 cm or more that is there for a month sampled by a vet.");
        yield return this.At(level, life.Last.Line, lump.Site.Span, message, LumpNumbers.Default.SourceOf("sample-mm"),
            [life.First.Line, size.Noted.Line, .. seen is { } line ? [line.Line] : Array.Empty<int>()]);
    }

    /// <summary>True for 10 mm or more measured, or a thing of 8 mm or more: the rule calls 1 cm a pea, and a real pea is smaller.</summary>
    internal static bool IsLarge(LumpSize size) =>
        (size.Typical ?? size.Low) >= LumpNumbers.Default[size.IsMeasured ? "sample-mm" : "sample-object-mm"];

    /// <summary>A sample or a word that the vet knows counts at any size; a mere look only at one that was as large by then.</summary>
    private static (string How, int Line)? SeenBy(LumpLife life)
    {
        VetLook? seen = null;
        int next = 0;
        LumpSize? size = null;
        foreach (VetLook look in life.Looks)
        {
            for (; next < life.Sizes.Length && life.Sizes[next].Day <= look.Day; next++)
            {
                size = life.Sizes[next];
            }

            bool counts = look.Sampled || LumpWords.Has(look.Noted.Item, "vet-knows") || (size is not null && IsLarge(size));
            seen = counts && !(seen is { Sampled: true } && !look.Sampled) ? look : seen;
        }

        return seen is null ? null : (seen.How + ".", seen.Noted.Line);
    }
}
