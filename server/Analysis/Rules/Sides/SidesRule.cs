using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>Left against right in one entry: the sizes of the same part differ past the error of the hand.</summary>
public sealed class SidesRule : IEntryRule
{
    /// <inheritdoc/>
    public string Name => "sides";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(EntryContext at)
    {
        List<(Examined Part, LumpSize Size)>? sized = null;
        foreach (NoteReading reading in at.Readings)
        {
            if (reading.Value.Unit == "mm" && Observations.At(Observations.In(at.Entry, reading.Line), reading.Span) is Examined { Site: not null } part
                && LumpSize.Of(new Noted(at.Entry.Head, reading.Line, part, reading)) is { } size)
            {
                (sized ??= []).Add((part, size));
            }
        }

        foreach ((Examined part, LumpSize size) in sized ?? [])
        {
            foreach ((Examined other, LumpSize otherSize) in sized!)
            {
                if (part.Word == other.Word && OtherSide.AreAcross(part.Site, other.Site) && Differs(otherSize, size))
                {
                    bool us = at.Note.Pet.ShowUsUnits;
                    yield return RuleContext.At(Name, FindingLevel.Watch, size.Noted.Line, part.Size!.Span,
                        $"{Wording.NameOf(part.Word.Word)} {part.Site!.Name}: {SizeWording.Show(size, us)}; {other.Site!.Name} is {SizeWording.Show(otherSize, us)}. The two sides differ by more than measuring by hand is off. {Wording.Advice(FindingLevel.Watch)}",
                        LumpNumbers.Default.SourceOf("sides-percent"), otherSize.Noted.Line);
                    break;
                }
            }
        }
    }

    /// <summary>True when the second is larger than the first past the error of the hand, and by <c>sides-percent</c> of <c>lumps.tsv</c>.</summary>
    private static bool Differs(LumpSize smaller, LumpSize larger) =>
        smaller.HandHigh < larger.HandLow && larger.Low * 100 >= smaller.High * (100 + LumpNumbers.Default["sides-percent"]);
}
