using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Free words: the text of a fact, a file's name, a tag, a remark. The reader takes text and files whole.</summary>
internal static class TextSlots
{
    public static SlotReader Tag { get; } = new TagSlot();

    public static ImmutableArray<SlotReader> All { get; } =
        [new FreeSlot(SlotKind.Text), new FreeSlot(SlotKind.File), new FreeSlot(SlotKind.Note), new FreeSlot(SlotKind.StrengthOfOne)];

    /// <summary>All that is left of the line, as free words; null where nothing is.</summary>
    public static FreeWords? Rest(Cursor at, int from, TokenKind kind)
    {
        int start = from;
        while (start < at.End && (Scanners.IsBlank(at.Line[start]) || ((at.Line[start] == ':' || Scanners.IsSeparator(at.Line[start])) && !(start + 1 < at.End && at.Line[start + 1] == '#'))))
        {
            start++;
        }

        if (start >= at.End)
        {
            return null;
        }

        var span = TextSpan.Between(start, at.End);
        at.Mark(kind, span);
        return new FreeWords(span, span.In(at.Line).ToString());
    }

    /// <summary>A file's name, which may hold blanks, and a caption behind it.</summary>
    public static void File(Cursor at, int from)
    {
        if (Rest(at, from, TokenKind.Name) is not { } all)
        {
            return;
        }

        at.Tokens.RemoveAt(at.Tokens.Count - 1);
        var file = new TextSpan(all.Span.Start, PhotoFile.Length(all.Text));
        at.Mark(TokenKind.Name, file);
        at.Add(SlotKind.File, new FreeWords(file, file.In(at.Line).ToString()));
        if (Rest(at, file.End, TokenKind.Text) is { } caption)
        {
            if (PhotoFile.IsPicture(caption.Text.Split(' ')[0]))
            {
                at.Report(new Problem(ProblemRules.SaidTwice, caption.Span, $"`{caption.Text}` is a second picture. Write one picture a line."));
            }

            at.Add(SlotKind.Note, caption);
        }
    }

    private sealed class FreeSlot(SlotKind kind) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => Kind switch
        {
            SlotKind.Text => word.Word == "pet" ? "a name, such as pet Marlow" : $"words after {word.Word}",
            SlotKind.File => "a file name, such as left-ear.jpg",
            _ => "",
        };
    }

    private sealed class TagSlot() : SlotReader(SlotKind.Tag)
    {
        /// <summary>Takes the tag at the cursor.</summary>
        public override bool BindWord(Cursor at)
        {
            if (at.Part.Kind != PartKind.Tag)
            {
                return false;
            }

            TextSpan span = at.Part.Span;
            if (span.Length == 1)
            {
                return at.Refuse(span, ProblemRules.Missing, "A tag needs a name right behind its @, such as @lower");
            }

            if (at.First<FindingTag>() is { } before)
            {
                at.SaidTwice(span, $"@{before.Name}");
                at.At++;
                return true;
            }

            at.Add(SlotKind.Tag, new FindingTag(span, at.Line.Substring(span.Start + 1, span.Length - 1).ToLowerInvariant()));
            return at.Taken(TokenKind.Tag);
        }
    }
}
