using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>What a rule about one entry may look at.</summary>
/// <param name="Note">What holds for the whole note.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Lines">All lines of the note; of other entries' lines nothing may be taken.</param>
/// <param name="Readings">Its values that can be right.</param>
/// <param name="Slips">Its values that cannot be right.</param>
/// <param name="Compared">Those of the values that are compared with others, each with its key.</param>
/// <param name="Earlier">What other entries say.</param>
public sealed record EntryContext(
    RuleContext Note,
    Entry Entry,
    ImmutableArray<LineSyntax> Lines,
    ImmutableArray<NoteReading> Readings,
    ImmutableArray<Slip> Slips,
    ImmutableArray<ComparedReading> Compared,
    Earlier Earlier);

/// <summary>A reading that is held against others, and how it is looked up.</summary>
public readonly record struct ComparedReading(NoteReading Reading, ReadingKey Key);
