using System.Collections.Immutable;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Signatures;

/// <summary>What a line takes behind its word.</summary>
/// <param name="Label">The word and the parts, in one line.</param>
/// <param name="Parts">What may follow, each with an example; each is a part of the label.</param>
/// <param name="Missing">The index of the part that the line needs and does not have yet; null where it has all.</param>
/// <param name="Markdown">What the word means.</param>
public sealed record LineSignature(string Label, ImmutableArray<string> Parts, int? Missing, string Markdown);

/// <summary>Shows what a line takes, from the table of slots.</summary>
public static class SignatureFeature
{
    private const string Between = " · ";

    /// <summary>What the line at <paramref name="place"/> takes; null where no word stands before the place.</summary>
    public static LineSignature? At(Document document, Place place, FeatureSettings settings)
    {
        if (LinePlace.At(document, place) is not { } at || LineState.Of(at, new NoteAround(document, at.Line, settings)) is not { Word: var word, Read: var read })
        {
            return null;
        }

        string[] hints = [.. word.Takes.Select(slot => SlotTable.Hint(slot.Kind, word)).Where(hint => hint.Length > 0).Distinct()];
        ImmutableArray<string> parts = [.. hints.Where(hint => !hints.Any(other => other != hint && other.StartsWith(hint, StringComparison.Ordinal)))];
        string? lacking = read.Problems.FirstOrDefault(problem => problem.Rule == ProblemRules.Missing)?.Message;
        int missing = lacking is null ? -1 : parts.IndexOf(word.Needed.Select(kind => SlotTable.Hint(kind, word)).FirstOrDefault(hint => hint.Length > 0 && lacking.EndsWith(hint, StringComparison.Ordinal)) ?? "");
        return parts.IsEmpty ? null : new LineSignature($"{word.Word} {string.Join(Between, parts)}", parts, missing < 0 ? null : missing, WordHover.Meaning(word));
    }
}
