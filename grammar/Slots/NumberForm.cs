using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>The forms a number can have.</summary>
internal enum NumberShape
{
    /// <summary><c>72</c>.</summary>
    Bare,

    /// <summary><c>38.6C</c>.</summary>
    WithUnit,

    /// <summary><c>18/15s</c>, <c>5/9</c>, <c>18 in 15 s</c>, <c>5 of 9</c>.</summary>
    Ratio,

    /// <summary><c>12x9mm</c>.</summary>
    Times,

    /// <summary><c>16-24</c>, <c>83.2-55.9kg</c>.</summary>
    Spread,
}

/// <summary>A number with its signs and units looked up, before a slot takes it.</summary>
/// <param name="Part">The part it starts in.</param>
/// <param name="Shape">Its form.</param>
/// <param name="Span">All that belongs to it.</param>
/// <param name="First">The first number.</param>
/// <param name="Second">The second number; 0 where there is none.</param>
/// <param name="Unit">The unit behind the last number, where it is one that is known.</param>
/// <param name="UnitSpan">Where that unit stands; empty where there is none.</param>
/// <param name="Bound">How exactly it is known.</param>
internal readonly record struct NumberForm(NumberPart Part, NumberShape Shape, TextSpan Span, decimal First, decimal Second, Unit? Unit, TextSpan UnitSpan, Bound Bound)
{
    /// <summary>True when no unit is written at all.</summary>
    public bool NoUnit => UnitSpan.Length == 0;
}
