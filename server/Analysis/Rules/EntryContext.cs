using System.Collections.Immutable;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Readings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>What a rule about one entry may look at.</summary>
/// <param name="Note">What holds for the whole note.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Readings">Its values.</param>
/// <param name="Compared">Those of them that can be right and are compared with others, each with its key.</param>
/// <param name="Earlier">What other entries say.</param>
public sealed record EntryContext(
    RuleContext Note,
    Entry Entry,
    ImmutableArray<NoteReading> Readings,
    ImmutableArray<ComparedReading> Compared,
    Earlier Earlier);

/// <summary>A reading that is held against others, and how it is looked up.</summary>
public readonly record struct ComparedReading(NoteReading Reading, ReadingKey Key);
