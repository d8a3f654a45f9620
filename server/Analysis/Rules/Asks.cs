namespace HealthNotes.Analysis.Rules;

/// <summary>What a rule asked of other entries: findings that asked for nothing that an edit touched need not be asked again.</summary>
[Flags]
internal enum Asks
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Pulses.</summary>
    Pulse = 1,

    /// <summary>Breathing rates.</summary>
    Breathing = 2,

    /// <summary>Temperatures.</summary>
    Temperature = 4,

    /// <summary>Other readings.</summary>
    OtherReadings = 8,

    /// <summary>Lumps.</summary>
    Lumps = 16,

    /// <summary>Seizures.</summary>
    Seizures = 32,

    /// <summary>What was noted at visits.</summary>
    VisitSigns = 64,

    /// <summary>All of it: lines have moved, and answers name lines.</summary>
    All = 127,
}

/// <summary>Tells what an edit touched.</summary>
internal static class AsksOf
{
    /// <summary>The kind of a vital's readings.</summary>
    public static Asks Readings(string what) => what switch
    {
        "hr" => Asks.Pulse,
        "rr" => Asks.Breathing,
        "temp" => Asks.Temperature,
        _ => Asks.OtherReadings,
    };

    /// <summary>What some entries say otherwise than those that stood in their place.</summary>
    public static Asks Difference(ReadOnlySpan<EntryAnalysis> before, ReadOnlySpan<EntryAnalysis> now)
    {
        Asks different = Asks.None;
        string[] days = DaysOf(before);
        if (!days.SequenceEqual(DaysOf(now)))
        {
            return Asks.All;
        }

        foreach (string vital in new[] { "hr", "rr", "temp", "" })
        {
            different |= ReadingsOf(before, vital).SequenceEqual(ReadingsOf(now, vital)) ? Asks.None : Readings(vital);
        }

        different |= LinesOf(before, entry => entry.Lumps).SequenceEqual(LinesOf(now, entry => entry.Lumps)) ? Asks.None : Asks.Lumps;
        different |= LinesOf(before, entry => entry.Seizures).SequenceEqual(LinesOf(now, entry => entry.Seizures)) ? Asks.None : Asks.Seizures;
        different |= LinesOf(before, entry => entry.VisitSigns).SequenceEqual(LinesOf(now, entry => entry.VisitSigns)) ? Asks.None : Asks.VisitSigns;
        return different;
    }

    private static string[] DaysOf(ReadOnlySpan<EntryAnalysis> entries) => [.. entries.ToArray().Select(entry => entry.Entry.Head.ToString() + entry.Entry.Line)];

    private static IEnumerable<ComparedReading> ReadingsOf(ReadOnlySpan<EntryAnalysis> entries, string vital) =>
        entries.ToArray().SelectMany(entry => entry.Compared).Where(compared => Readings(compared.Reading.What) == Readings(vital));

    private static IEnumerable<T> LinesOf<T>(ReadOnlySpan<EntryAnalysis> entries, Func<EntryAnalysis, IEnumerable<T>> lines) => entries.ToArray().SelectMany(lines);
}
