using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Laboratory values with their own ranges.</summary>
internal static class LabSlots
{
    public static ImmutableArray<SlotReader> All { get; } = [new Reference(), new Lab()];

    /// <summary>A laboratory's own range: <c>ref 44-159</c>.</summary>
    private sealed class Reference() : SlotReader(SlotKind.Reference)
    {
        /// <summary><c>(0.8-2.4)</c> behind the value.</summary>
        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Spread, Part.BoundSpan.Length: 0 } && form.First <= form.Second && at.First<LabValue>() is not null
            ? new ValueRange(form.Span, form.First, form.Second, null)
            : null;

        public override bool BindWord(Cursor at)
        {
            bool named = at.Is(at.At, "ref") || at.Is(at.At, "reference") || at.Is(at.At, "range") || at.Is(at.At, "normal");
            if (!named || at.At + 1 >= at.Parts.Count || at.Parts[at.At + 1] is not NumberPart { BoundSpan.Length: 0, Third.Exists: false } part
                || part.Second.Sign(at.Line) != '-' || at.Digits(part.First.Digits) is not { } low || at.Digits(part.Second.Digits) is not { } high || high < low)
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, 2);
            at.Add(SlotKind.Reference, new ValueRange(span, low, high, null));
            at.At++;
            return at.Taken(TokenKind.Value, span);
        }
    }

    /// <summary>A laboratory's number with whatever unit, or its result in words.</summary>
    private sealed class Lab() : SlotReader(SlotKind.LabValue)
    {
        private static readonly string[] Results = ["positive", "pos", "negative", "neg", "normal", "high", "low", "ok", "fine", "wnl", "raised", "pending"];

        public override string Hint(LineWord word) => "a value such as 110umol/L, or negative";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => Results;

        public override bool BindWord(Cursor at)
        {
            string? result = Results.FirstOrDefault(word => at.Is(at.At, word));
            if (result is null || at.First<FreeWords>() is null || at.First<NoteValue>() is not null)
            {
                return false;
            }

            at.Add(SlotKind.LabValue, new LabValue(at.Part.Span, Bound.Exact, null, result switch { "pos" => "positive", "neg" => "negative", _ => result }));
            return at.Taken(TokenKind.Value);
        }

        public override bool BindNumber(Cursor at, NumberPart part)
        {
            if (part.Second.Exists || at.First<FreeWords>() is null || at.First<NoteValue>() is not null || at.Digits(part.First.Digits) is not { } number)
            {
                return false;
            }

            TextSpan unit = part.First.Unit;
            if (IsFlag(unit.In(at.Line)))
            {
                // "3.3L": low, and no litres
                at.Remark.Add(unit);
                at.Mark(TokenKind.Text, unit);
                part = new NumberPart(TextSpan.Between(part.Span.Start, unit.Start), part.BoundSpan, part.First with { Unit = default }, default, default);
                unit = default;
            }

            bool apart = unit.Length == 0 && at.IsWord(at.At + 1) && at.OnlyBlanks(at.At, 2) && LooksLikeUnit(at.TextAt(at.At + 1));
            unit = apart ? at.Parts[at.At + 1].Span : unit;
            var span = TextSpan.Between(part.Span.Start, Math.Max(part.Span.End, unit.End));
            at.Add(SlotKind.LabValue, new LabValue(span, at.BoundOf(part), number, unit.In(at.Line).ToString()));
            at.At += apart ? 1 : 0;
            return at.Taken(TokenKind.Value, span);
        }

        /// <summary>The letter that a laboratory puts behind a value outside its interval.</summary>
        private static bool IsFlag(ReadOnlySpan<char> text) => text is "H" or "L";

        private static bool LooksLikeUnit(ReadOnlySpan<char> text) => !IsFlag(text) && (text.Contains('/') || text is "%" or "mmHg" || (text.Length <= 2 && text is not ("in" or "at" or "or" or "on" or "by")));
    }
}
