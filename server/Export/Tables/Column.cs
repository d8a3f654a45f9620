namespace HealthNotes.Export.Tables;

/// <summary>The type of a column, in every format.</summary>
public enum ColumnType
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Integer,

    /// <summary>A number with a fraction.</summary>
    Number,

    /// <summary>True or false.</summary>
    YesNo,

    /// <summary>A day.</summary>
    Date,
}

/// <summary>What becomes of a column when names are replaced by pseudonyms.</summary>
public enum Privacy
{
    /// <summary>It tells nothing of a person and stays.</summary>
    Open,

    /// <summary>A name or a number that can be traced: it becomes a keyed hash.</summary>
    Name,

    /// <summary>It stays when the vocabulary or <c>open-words.tsv</c> has it, else it becomes a keyed hash: people write more than its word there.</summary>
    Known,

    /// <summary>Somebody's own words: they are left out.</summary>
    Words,
}

/// <summary>A column of a table.</summary>
/// <param name="Name">Its name in every format.</param>
/// <param name="Type">The type of its values.</param>
/// <param name="About">What it holds, with its unit.</param>
/// <param name="Privacy">What becomes of it under pseudonyms.</param>
/// <param name="Always">True when no row lacks it.</param>
public record Column(string Name, ColumnType Type, string About, Privacy Privacy = Privacy.Open, bool Always = false);

/// <summary>A column and where its values come from: text, a whole number, a decimal, true or false, a day, or null.</summary>
internal sealed record Column<TRow>(string Name, ColumnType Type, string About, Func<ExportedNote, TRow, object?> Value, Privacy Privacy = Privacy.Open, bool Always = false)
    : Column(Name, Type, About, Privacy, Always);
