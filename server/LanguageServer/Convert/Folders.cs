using System.Collections.Immutable;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the client's folders to paths.</summary>
internal static class Folders
{
    /// <summary>The folders at the start: several, or one in one of the two older fields, or none.</summary>
    public static ImmutableArray<string> Of(InitializeParams parameters) => parameters.WorkspaceFolders is { } several
        ? Paths(several)
        : [.. new[] { parameters.RootUri is { } uri ? Uris.PathOf(uri) : parameters.RootPath }.OfType<string>()];

    /// <summary>The folders after some went and some came.</summary>
    public static ImmutableArray<string> After(ImmutableArray<string> before, WorkspaceFoldersChangeEvent? change) =>
        [.. before.Except(Paths(change?.Removed)).Union(Paths(change?.Added))];

    private static ImmutableArray<string> Paths(WorkspaceFolder[]? folders) =>
        [.. (folders ?? []).Select(folder => Uris.PathOf(folder?.Uri)).OfType<string>().Distinct()];
}
