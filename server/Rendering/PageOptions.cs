namespace HealthNotes.Rendering;

/// <summary>Who a page is for.</summary>
public enum Audience
{
    /// <summary>The clinic: everything.</summary>
    Vet,

    /// <summary>The owner: the same facts in plain words, what to do next, and the cautions.</summary>
    Owner,

    /// <summary>Anybody the owner shows it to: no contacts, no chip, and only the pictures that were chosen.</summary>
    Share,
}

/// <summary>What a page is asked to show.</summary>
public sealed record PageOptions
{
    /// <summary>Who the page is for. For <see cref="Audience.Share"/> the note is to be passed through <see cref="Sharing.SharedNote"/> before.</summary>
    public Audience For { get; init; }

    /// <summary>The paper it is laid out for; null leaves it to the printer.</summary>
    public Paper? Paper { get; init; }

    /// <summary>A page for the clinic, with no picture.</summary>
    public static PageOptions Default { get; } = new();

    /// <summary>Where pictures come from; without it they are named, not shown.</summary>
    public PhotoSource? Photos { get; init; }

    /// <summary>Keeps small pictures for the next page; null makes each anew.</summary>
    public Photos.PhotoCache? Cache { get; init; }

    /// <summary>Ends the work on pictures, which may take seconds.</summary>
    public CancellationToken Stop { get; init; }
}

/// <summary>Gives the bytes of a picture by the name that the note calls it.</summary>
/// <param name="name">The file as the note names it.</param>
/// <returns>Its bytes, or why there are none.</returns>
public delegate PhotoBytes PhotoSource(string name);

/// <summary>A picture's file.</summary>
/// <param name="Bytes">What it holds; null when it can't be shown.</param>
/// <param name="Problem">Why it can't be shown, in plain words; null when it can.</param>
public sealed record PhotoBytes(byte[]? Bytes, string? Problem);
