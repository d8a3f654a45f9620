using System.Globalization;
using System.Text;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Grammar.Formatting;

/// <summary>
/// Writes a note in its one canonical form: spelling, order, indent, line endings. It changes no meaning, keeps every
/// comment, blank line and word of free text, and leaves a line that has a problem exactly as it is.
/// </summary>
public static class NoteFormatter
{
    /// <summary>How many blanks the lines of an entry start with.</summary>
    public const int EntryIndent = 2;

    /// <summary>The formatted text of a note. Formatting it again changes nothing.</summary>
    public static string Format(NoteSyntax syntax)
    {
        string ending = EndingOf(syntax);
        var text = new StringBuilder(syntax.ByteOrderMark ? "\uFEFF" : "");
        int index = 0;
        foreach (string formatted in FormatLines(syntax, 0))
        {
            bool last = ++index == syntax.Lines.Length;
            if (last && formatted.Length == 0)
            {
                break;
            }

            text.Append(formatted).Append(ending);
        }

        return text.ToString();
    }

    /// <summary>
    /// The formatted text of each line from <paramref name="first"/> on, without line breaks. That line must be the head of an
    /// entry or the first of the note: nothing above has an effect on it then.
    /// </summary>
    public static IEnumerable<string> FormatLines(NoteSyntax syntax, int first)
    {
        var context = new LineContext();
        for (int index = first; index < syntax.Lines.Length; index++)
        {
            yield return FormatLine(syntax.Lines[index], context);
        }
    }

    /// <summary>The line break of the formatted note: the most frequent one.</summary>
    public static string EndingOf(NoteSyntax syntax) => syntax.Lines
        .Where(line => line.Ending.Length > 0)
        .GroupBy(line => line.Ending)
        .OrderByDescending(group => group.Count())
        .Select(group => group.Key)
        .FirstOrDefault("\n");

    private static string FormatLine(LineSyntax line, LineContext context)
    {
        switch (line.Kind)
        {
            case LineKind.Blank:
                context.Break();
                return "";
            case LineKind.FreeText:
                string markdown = line.FreeText;
                return new string(' ', context.TextIndent(line.Indent)) + (markdown.Length == 0 ? ">" : "> " + markdown);
            case LineKind.EntryHead:
                context.StartEntry();
                return line.Problems.Length > 0 || line.EntryHead!.Date is null ? line.Text : Head(line.EntryHead!) + Comment(line);
            case LineKind.Item when line.Problems.Length == 0:
                string formatted = new string(' ', context.ItemIndent) + Canonical(line);
                context.After(line.Indent, context.ItemIndent);
                return formatted + Comment(line);
            case LineKind.Item:
                context.After(line.Indent, line.Indent);
                return line.Text;
            case LineKind.Comment:
                context.EndText();
                return line.Text.TrimEnd();
            default:
                context.Break();
                return line.Text;
        }
    }

    /// <summary>
    /// The line in its canonical order. A line that starts with an owner's phrase, or holds several observations, keeps its words
    /// as they are; so does one that would be read differently in that order.
    /// </summary>
    private static string Canonical(LineSyntax line)
    {
        int end = line.Marks[^1].Kind == TokenKind.Comment ? line.Marks[^1].Span.Start : line.Text.Length;
        string written = line.Text[line.Indent..end].TrimEnd();
        if (line.Items is not [{ Head.Lead: null or { Means: Vocabulary.LeadMeans.Plain } } item] || item is Items.MedicinePlan { Head.Span.Length: 0 })
        {
            return written;
        }

        if (item.Absent.Any(sign => sign.Sense == Items.Sense.Ended) || item.Words.Any(sign => sign.Word is { Part: "any", Word: "gone" or "resolved" }))
        {
            // what is over depends on where the word for it stands
            return written;
        }

        string canonical = ItemPrinter.Print(item);
        return canonical == written || IsSame(NoteSyntax.Parse(canonical).Lines[0], line) ? canonical : written;
    }

    /// <summary>True where two lines print the same reading and have it in the same slots: the name of a food can print like a sign.</summary>
    private static bool IsSame(LineSyntax one, LineSyntax other) =>
        MeaningPrinter.Print(one) == MeaningPrinter.Print(other) && Slots(one).SequenceEqual(Slots(other));

    private static IEnumerable<Vocabulary.SlotKind> Slots(LineSyntax line) => line.Items.SelectMany(item => item.Body.Filled).Select(slot => slot.Kind).Order();

    internal static string Head(EntryHead head) => string.Join(' ', new[]
    {
        head.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? (head.NoYear is var (month, day) ? $"{day} {CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[month - 1]}" : ""),
        head.Time?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "",
        head.PartOfDay ?? "",
        head.Kind,
        head.By is null ? "" : "by " + head.By,
    }.Where(word => word.Length > 0));

    /// <summary>The comment at the line's end with the blanks the author put before it: columns of comments stay columns.</summary>
    private static string Comment(LineSyntax line)
    {
        if (line.Marks[^1] is not { Kind: TokenKind.Comment } comment)
        {
            return "";
        }

        int contentEnd = line.Text.AsSpan(0, comment.Span.Start).TrimEnd().Length;
        return string.Concat(line.Text.AsSpan(contentEnd, comment.Span.Start - contentEnd), line.Text.AsSpan(comment.Span.Start).TrimEnd());
    }

    /// <summary>What the indent of a line depends on: the entry it is in, and the item above it.</summary>
    private sealed class LineContext
    {
        private bool inEntry;
        private (int Before, int Now)? above;
        private int? textIndent;

        public int ItemIndent => inEntry ? EntryIndent : 0;

        public void StartEntry()
        {
            inEntry = true;
            Break();
        }

        public void Break()
        {
            above = null;
            textIndent = null;
        }

        public void EndText() => textIndent = null;

        public void After(int before, int now)
        {
            above = (before, now);
            textIndent = null;
        }

        /// <summary>Free text keeps belonging to what it belonged to: deeper than the item above it, or not.</summary>
        public int TextIndent(int written)
        {
            if (textIndent is null)
            {
                bool belongs = above is { } item && written > item.Before;
                textIndent = belongs ? above!.Value.Now + EntryIndent : Math.Min(ItemIndent, above?.Now ?? int.MaxValue);
            }

            return textIndent.Value;
        }
    }
}
