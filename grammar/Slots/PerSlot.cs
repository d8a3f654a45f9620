using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary><c>per vet 2026-01-20</c>; who and when may stand apart.</summary>
internal sealed class PerSlot() : SlotReader(SlotKind.Per)
{
    public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => ["per"];

    public override bool BindWord(Cursor at)
    {
        if (!at.Is(at.At, "per") || at.StateAhead())
        {
            return false;
        }

        TextSpan keyword = at.Part.Span;
        at.Taken(TokenKind.Keyword);
        int first = at.At;
        while (at.IsWord(at.At) && !Dates.Starts(at, at.At))
        {
            at.At++;
        }

        string who = "";
        if (first < at.At)
        {
            var name = TextSpan.Between(at.Parts[first].Span.Start, at.Parts[at.At - 1].Span.End);
            at.Mark(TokenKind.Name, name);
            who = at.WithSingleBlanks(name);
        }

        PartialDate? when = Dates.Starts(at, at.At) ? Dates.Take(at) : null;
        if (who.Length == 0 && when is null)
        {
            ScheduleSlots.Missing(at, keyword, "per vet 2026-01-20");
            return true;
        }

        Keep(at, who, when, TextSpan.Between(keyword.Start, at.Parts[at.At - 1].Span.End));
        return true;
    }

    public override bool BindNumber(Cursor at, NumberPart part)
    {
        if (!Dates.Starts(at, at.At))
        {
            return Dates.Refuse(at, part);
        }

        Keep(at, "", Dates.Take(at), part.Span);
        return true;
    }

    private static void Keep(Cursor at, string who, PartialDate? when, TextSpan span)
    {
        if (at.First<Attribution>() is not { } before)
        {
            if (who.Length > 0 || when is not null)
            {
                at.Add(SlotKind.Per, new Attribution(span, who, when));
            }
        }
        else if ((who.Length > 0 && before.Who.Length > 0) || (when is not null && before.When is not null))
        {
            at.SaidTwice(span, before.Span.In(at.Line).ToString());
        }
        else
        {
            at.Set(SlotKind.Per, before with { Who = before.Who + who, When = before.When ?? when });
        }
    }
}
