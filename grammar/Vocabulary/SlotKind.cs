namespace HealthNotes.Grammar.Vocabulary;

/// <summary>The kinds of value a line word may take; the names in the <c>takes</c> column of <c>words.tsv</c>.</summary>
public enum SlotKind
{
    /// <summary>Free words to the end of the line.</summary>
    Text,

    /// <summary>Dog or cat.</summary>
    Species,

    /// <summary>Sex, and neutered or entire.</summary>
    Sex,

    /// <summary>A date of birth: day, month, year, or about.</summary>
    Birth,

    /// <summary>Metric or us.</summary>
    Units,

    /// <summary>A vital's word, in <c>usual</c> and <c>call-if</c>.</summary>
    Vital,

    /// <summary>A range such as <c>16-24</c>.</summary>
    Range,

    /// <summary>A line to cross, such as <c>&gt;32</c>.</summary>
    Limit,

    /// <summary>Who said so and when: <c>per vet 2026-01-20</c>.</summary>
    Per,

    /// <summary>A medicine's name.</summary>
    Medicine,

    /// <summary>An amount of medicine or food.</summary>
    Amount,

    /// <summary>How a medicine goes in, with food or not.</summary>
    Route,

    /// <summary>Intervals, durations and dates: <c>every 12h for 7d</c>.</summary>
    Schedule,

    /// <summary>Since when: <c>since Saturday</c>.</summary>
    Since,

    /// <summary>A reason or remark: free words after the rest.</summary>
    Note,

    /// <summary>A count over a time, or a rate.</summary>
    Rate,

    /// <summary>A temperature.</summary>
    Temperature,

    /// <summary>A mass, or a difference of two.</summary>
    Mass,

    /// <summary>Seconds.</summary>
    Seconds,

    /// <summary>A value on a scale.</summary>
    Score,

    /// <summary>Blood glucose.</summary>
    Glucose,

    /// <summary>How the animal was.</summary>
    State,

    /// <summary>Where a vital was taken.</summary>
    Place,

    /// <summary>A side, a region, or both.</summary>
    Site,

    /// <summary>A lymph node's region and side.</summary>
    Node,

    /// <summary>A joint's region and side.</summary>
    Joint,

    /// <summary>A muscle's region and side.</summary>
    Muscle,

    /// <summary>A mammary gland's side and number.</summary>
    Gland,

    /// <summary>A tooth's number.</summary>
    Tooth,

    /// <summary>Any site, tooth or gland, when a line points at another.</summary>
    AnySite,

    /// <summary>A name that tells two findings in one place apart: <c>@lower</c>.</summary>
    Tag,

    /// <summary>Diameters, or a comparison object.</summary>
    Size,

    /// <summary>Words that describe what was seen.</summary>
    Words,

    /// <summary>A part of a whole, or an amount eaten.</summary>
    Portion,

    /// <summary>The name of a food.</summary>
    FoodName,

    /// <summary>A volume.</summary>
    Volume,

    /// <summary>An event count.</summary>
    Times,

    /// <summary>How long something lasted.</summary>
    Duration,

    /// <summary>How far a walk went.</summary>
    Distance,

    /// <summary>Another line's word.</summary>
    Item,

    /// <summary>The name of a finding about notes, such as <c>lump-sample</c>.</summary>
    Rule,

    /// <summary>What falls due, in free words.</summary>
    Topic,

    /// <summary>A file name.</summary>
    File,

    /// <summary>The word ok.</summary>
    Ok,

    /// <summary>A blood pressure: <c>150/90</c>.</summary>
    Pressure,

    /// <summary>A length round the body.</summary>
    Length,

    /// <summary>What a laboratory measured.</summary>
    Analyte,

    /// <summary>A laboratory's value with whatever unit, or in words.</summary>
    LabValue,

    /// <summary>A laboratory's own range: <c>ref 44-159</c>.</summary>
    Reference,

    /// <summary>A percentage.</summary>
    Percent,

    /// <summary>How many of how many: <c>13/14</c>.</summary>
    Count,

    /// <summary>When an act was done, and how long it holds.</summary>
    Validity,

    /// <summary>What one tablet holds, as written.</summary>
    Strength,

    /// <summary>What one tablet holds, as a measure.</summary>
    StrengthOfOne,
}
