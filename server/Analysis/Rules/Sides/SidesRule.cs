using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>Left against right in one entry: the sizes of the same part differ past the error of the hand.</summary>
public sealed class SidesRule : IEntryRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("sides", "seen", 9);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        List<(Examined Part, LumpSize Size)>? sized = null;
        foreach (NoteReading reading in entry.Readings)
        {
            if (reading.Value.Unit == "mm" && Observations.At(Observations.In(entry.Entry, reading.Line), reading.Span) is Examined { Site: not null } part
                && LumpSize.Of(new Noted(entry.Entry.Head, reading.Line, part, reading)) is { } size)
            {
                (sized ??= []).Add((part, size));
            }
        }

        // the smallest size of each side speaks for it
        var smallest = (sized ?? []).GroupBy(one => (one.Part.Word, one.Part.Site!.Side, one.Part.Site.Region, one.Part.Site.Number))
            .ToDictionary(side => side.Key, side => side.MinBy(one => one.Size.High));
        foreach ((Examined part, LumpSize size) in sized ?? [])
        {
            if (OtherSide.Of(part.Site!.Side) is { } across && smallest.TryGetValue((part.Word, across, part.Site.Region, part.Site.Number), out (Examined Part, LumpSize Size) other) && Differs(other.Size, size))
            {
                bool us = at.Facts.Pet.ShowUsUnits;
                yield return this.At(FindingLevel.Watch, size.Noted.Line, part.Size!.Span,
                    $"{Wording.NameOf(part.Word.Word)} {part.Site.Name}: {SizeWording.Show(size, us)}; {other.Part.Site!.Name} is {SizeWording.Show(other.Size, us)}. The two sides differ by more than measuring by hand is off.",
                    LumpNumbers.Default.SourceOf("sides-percent"), other.Size.Noted.Line);
            }
        }
    }

    /// <summary>True when the second is larger than the first past the error of the hand, and by <c>sides-percent</c> of <c>lumps.tsv</c>.</summary>
    private static bool Differs(LumpSize smaller, LumpSize larger) =>
        smaller.HandHigh < larger.HandLow && larger.Low * 100 >= smaller.High * (100 + LumpNumbers.Default["sides-percent"]);
}
