using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Lenses;

/// <summary>A line shown above a line of the note.</summary>
/// <param name="Range">The characters it is about; it is shown above their line.</param>
/// <param name="Title">What is shown, as plain text.</param>
/// <param name="Command">What a click does; null where it does nothing.</param>
public sealed record LensText(PlaceRange Range, string Title, LensCommand? Command = null);

/// <summary>What a click on a lens does: a command's name, and the document it is for.</summary>
/// <param name="Name">The command; see <see cref="LensCommands"/>.</param>
/// <param name="Uri">The document.</param>
/// <param name="Place">The place it starts from.</param>
public sealed record LensCommand(string Name, string Uri, Place Place);

/// <summary>The commands that lenses name.</summary>
public static class LensCommands
{
    /// <summary>Adds a check dated today.</summary>
    public const string AddCheck = "add-check";

    /// <summary>Takes a check one part further, from <see cref="LensCommand.Place"/>.</summary>
    public const string NextPart = "next-part";

    /// <summary>Moves the cursor to <see cref="LensCommand.Place"/>.</summary>
    public const string GoTo = "go-to";
}
