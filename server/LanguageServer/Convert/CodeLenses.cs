using System.Globalization;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Lenses;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From lines shown above lines to code lenses.</summary>
internal static class CodeLenses
{
    /// <summary>One lens. The protocol shows no lens without a command: one that does nothing has a command without a name.</summary>
    public static CodeLens Of(Document document, LensText lens, PositionEncoding encoding) => new(
        Positions.Of(document, lens.Range, encoding),
        lens.Command switch
        {
            { Name: LensCommands.AddCheck } add => new Command(lens.Title, CommandNames.AddCheckToday, [add.Uri]),
            { Name: LensCommands.NextPart } next => new Command(lens.Title, CommandNames.NextPart, [next.Uri, .. Written(Positions.Of(document, next.Place, encoding))]),
            { Name: LensCommands.GoTo } to => new Command(lens.Title, CommandNames.GoTo, [to.Uri, .. Written(Positions.Of(document, to.Place, encoding))]),
            _ => new Command(lens.Title, ""),
        });

    private static string[] Written(Position position) =>
        [position.Line.ToString(CultureInfo.InvariantCulture), position.Character.ToString(CultureInfo.InvariantCulture)];
}
