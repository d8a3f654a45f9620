using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Problems;

/// <summary>A question that nobody has answered yet.</summary>
/// <param name="Day">The day it was written; null when its entry has none.</param>
/// <param name="Line">The index of its line.</param>
/// <param name="Text">The question.</param>
public sealed record OpenQuestion(DateOnly? Day, int Line, string Text)
{
    private static readonly char[] Marks = [' ', ',', '.', ';', ':', '?', '!', '"', '\'', '(', ')'];
    private static readonly string[] Answers = ["ask", "asked", "answered", "answer", "question", "the", "a", "about"];

    /// <summary>
    /// The open ones, in the order of the file. A later visit answers a question, and so does a <c>done</c> line whose words are
    /// all in it (<c>done ear drops</c>).
    /// </summary>
    public static ImmutableArray<OpenQuestion> Of(PetRecord record)
    {
        var open = ImmutableArray.CreateBuilder<OpenQuestion>();
        Noted[] done = [.. record.Of(new CourseKey("done", "")).Lines];
        foreach (PetEntry entry in record.Entries)
        {
            bool before = record.Period.Visit is { } visit && (entry.Day < visit.Head.Date || (entry.Day == visit.Head.Date && !Equals(entry.Entry, visit) && entry.Entry.Line < visit.Line));
            foreach ((int line, NoteItem item) in entry.Entry.Items)
            {
                if (item is TextTask { Word.Word: "ask" } ask && !before && !done.Any(one => !(one.Day < entry.Day) && IsAnswer(((TextTask)one.Item!).Text.Text, ask.Text.Text)))
                {
                    open.Add(new OpenQuestion(entry.Day, line, ask.Text.Text));
                }
            }
        }

        return open.ToImmutable();
    }

    private static bool IsAnswer(string done, string question)
    {
        string[] words = [.. Words(done).Where(word => !Answers.Contains(word))];
        return words.Length > 0 && words.All(Words(question).Contains);
    }

    private static HashSet<string> Words(string text) => [.. text.ToLowerInvariant().Split(Marks, StringSplitOptions.RemoveEmptyEntries)];
}
