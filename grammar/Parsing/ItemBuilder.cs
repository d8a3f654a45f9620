using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Makes the typed item of an observation that was read.</summary>
internal static class ItemBuilder
{
    public static NoteItem? Build(Draft draft, TimeOnly? time)
    {
        var head = new ItemHead(draft.Word, draft.Head.Span, time, draft.Head.Lead);
        ItemBody body = draft.Body;
        return draft.Word.Kind switch
        {
            WordKind.Fact => Fact(head, body),
            WordKind.Vital => body.First<NoteValue>(SlotKind.Reference) is null ? new Examined(head, body) : new Reading(head, body),
            WordKind.Exam => new Examined(head, body),
            WordKind.Scan => draft.None ? new NotSeen(head, body) : body.Get<Site>(SlotKind.Site) is null ? new Examined(head, body) : new Finding(head, body),
            WordKind.Care when draft.None => new NotSeen(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Medicine) => new DoseEvent(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Analyte) => new LabResult(head, body),
            WordKind.Care => SaysNone(body, draft.Head.Lead) ? new NotSeen(head, body) : new CareEvent(head, body),
            WordKind.Act => new Act(head, body),
            WordKind.Task => head.Word.Word switch { "recheck" => new Recheck(head, body), "due" => new DueTask(head, body), _ => new TextTask(head, body) },
            WordKind.Picture => new Photo(head, body),
            WordKind.Skip => new Skipped(head, body),
            _ => new RestOk(head, body),
        };
    }

    /// <summary>True where it says only that it did not happen, or is over.</summary>
    private static bool SaysNone(ItemBody body, LeadWord? lead) => body.First<EventCount>() is { Number: 0, Bound: Bound.Exact }
        || (body.Words.Length > 0 || (body.Absent.Length > 0 && lead is { Means: not LeadMeans.Plain }) || body.Absent.Any(sign => sign.Sense == Sense.Ended))
        && body.Words.All(sign => sign.Word.Word is "gone" or "resolved" or "none" && sign.Word.Meanings.All(meaning => meaning.Level == Level.Expected))
        && body.Filled.All(slot => slot.Kind is SlotKind.Words or SlotKind.Note);

    private static NoteItem Fact(ItemHead head, ItemBody body) => head.Word.Word switch
    {
        "species" => new SpeciesFact(head, body),
        "sex" => new SexFact(head, body),
        "born" => new BornFact(head, body),
        "adult-weight" => new AdultWeightFact(head, body),
        "units" => new UnitsFact(head, body),
        "usual" => new UsualFact(head, body),
        "call-if" or CallIfFact.Now => new CallIfFact(head, body),
        "med-range" => new MedicineRangeFact(head, body),
        "med-strength" => new MedicineStrengthFact(head, body),
        "override-urgent" => new OverrideFact(head, body),
        "med" => new MedicinePlan(head, body),
        "home-check" => new HomeCheckFact(head, body),
        "accept" => new AcceptFact(head, body),
        "expect" => new ExpectFact(head, body),
        _ => new TextFact(head, body),
    };
}

/// <summary>An observation as it was read, before its neighbours complete it.</summary>
internal readonly record struct Draft(Head Head, LineWord Word, ItemBody Body, bool None, ImmutableArray<TimeOnly> TimesOfDay, Problem? Lacking)
{
    public IReadOnlyList<TimeOnly> Times => TimesOfDay;
}
