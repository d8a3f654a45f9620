using HealthNotes.Analysis.Findings;

namespace HealthNotes.Analysis.Ranges;

/// <summary>The range shown as normal beside a reading; a null end is open.</summary>
public sealed record NormalRange(Selector For, decimal? Low, decimal? High, string Unit, string Source, string Note);

/// <summary>A line that raises a level when it is crossed.</summary>
/// <param name="For">Which readings it is for.</param>
/// <param name="Above">True when it is crossed upwards.</param>
/// <param name="Level">The level it raises.</param>
/// <param name="Value">Where it lies.</param>
/// <param name="Inclusive">True when exactly the value already counts.</param>
/// <param name="Repeat">How many comparable readings in a row it takes.</param>
/// <param name="Unit">The unit of the value.</param>
/// <param name="Source">The publication.</param>
public sealed record LevelLine(Selector For, bool Above, FindingLevel Level, decimal Value, bool Inclusive, int Repeat, string Unit, string Source);

/// <summary>A life stage.</summary>
/// <param name="Key">Its key in the tables.</param>
/// <param name="Name">What an owner is told.</param>
/// <param name="Source">The publication.</param>
public sealed record LifeStage(string Key, string Name, string Source);

/// <summary>A caution in an owner's words.</summary>
public sealed record Caution(string Key, string Text, string Source);
