using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>The days of an act: when it is to be repeated, until when it holds, and one that is still to come.</summary>
internal sealed class ActDays(Cursor at)
{
    /// <summary>What falls due, where an act turned out to be still to come; null otherwise.</summary>
    public FreeWords? Topic { get; private set; }

    /// <summary>Gives the topic to the observation it belongs to.</summary>
    public FreeWords? TakeTopic()
    {
        FreeWords? topic = Topic;
        Topic = null;
        return topic;
    }

    /// <summary>When an act is to be repeated: <c>flea treatment done, next one 5 Nov</c>, <c>next in 4 weeks</c>. It holds until then.</summary>
    public bool Next(int words)
    {
        int behind = at.At + words;
        bool length = at.Is(behind, "in") && behind + 1 < at.Parts.Count && at.Parts[behind + 1].Kind == PartKind.Number;
        behind += length || at.Is(behind, "on") ? 1 : 0;
        if (!length && !Dates.Starts(at, behind, yearless: true))
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(at.At, behind - at.At));
        at.At = behind;
        if (!length && Dates.Take(at, yearless: true) is { } until)
        {
            at.Set(SlotKind.Validity, (at.First<Schedule>() ?? Schedule.None) with { Until = until });
        }

        return true;
    }

    /// <summary>An act that is still to come: <c>vaccine lepto due in 4 weeks</c>. Behind a date it says until when the act holds.</summary>
    public Head? Due(Head head)
    {
        if (at.First<Schedule>() is { On: not null } && at.At + 1 < at.Parts.Count)
        {
            TextSpan keyword = at.Part.Span;
            at.Taken(TokenKind.Keyword);
            if (Dates.Starts(at, at.At, yearless: true))
            {
                PartialDate? until = Dates.Take(at, yearless: true);
                at.Set(SlotKind.Validity, at.First<Schedule>()! with { Until = until });
            }
            else
            {
                at.Report(new Problem(ProblemRules.Missing, keyword, "`due` needs a date behind it, such as due 2029-11-01"));
            }

            return null;
        }

        var topic = TextSpan.Between(head.Span.Start, at.At > 0 ? at.Parts[at.At - 1].Span.End : head.Span.End);
        at.Mark(TokenKind.Keyword, at.Part.Span);
        at.At++;
        Topic = new FreeWords(topic, at.WithSingleBlanks(topic));
        return head with { Word = at.Vocabulary.LineWords.Find("due")!, Lead = null, Line = 0 };
    }
}
