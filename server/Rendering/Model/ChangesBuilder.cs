using HealthNotes.Analysis.Changes;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>What changed since the last visit, or since a day that was asked for.</summary>
internal static class ChangesBuilder
{
    public static Changes? Build(PageContext context)
    {
        if (ChangeList.Of(context.Analysis.Record, context.Options.Since) is not { } changes || changes is { IsEmpty: true, From: SinceWhat.FirstEntry })
        {
            return null;
        }

        IEnumerable<string> lines = changes.Places.Where(place => place.IsNew || place.Gone || place.Now is null || place.Then is null).Select(place => Place(context, place))
            .Concat(changes.Signs.Select(Sign))
            .Concat(changes.Medicines.Select(Medicine))
            .Concat(changes.Events.Select(PageWords.Happened));
        IEnumerable<ChangedValue> values = changes.Values.Select(value => Value(context, value))
            .Concat(changes.Places.Where(place => place is { IsNew: false, Gone: false, Then: not null, Now: not null }).Select(place => Size(context, place)));
        return new Changes(changes.Since, changes.From, Shown<ChangedValue>.First([.. values], PageLimits.TableRows), Shown<string>.First([.. lines], PageLimits.ListItems));
    }

    private static ChangedValue Value(PageContext context, ValueChange value) => new(
        string.Join(' ', new[] { Wording.NameOf(value.Key.Word), Taken(value.Now) }.Where(word => word.Length > 0)),
        value.Then is { } then ? PageWords.ValueOn(context.Units.Show(then.Value), then.Day) : PageWords.NotBefore,
        PageWords.ValueOn(context.Units.Show(value.Now.Value), value.Now.Day),
        value.Difference is { } difference
            ? PageWords.ChangedBy(difference, context.Units.Difference(difference, value.Now.Value.OnScaleOfNine().Unit), value.Now.What == "weight" ? value.InPercent : null, value.WithinCounting)
            : "");

    private static string Taken(NoteReading reading) => reading is { What: "hr" or "rr", State: { } state } ? state
        : reading is { What: "temp", Site: { } site } ? $"({site})"
        : "";

    private static ChangedValue Size(PageContext context, PlaceChange place) => new(
        Name(place.Life), PageWords.ValueOn(ExaminationBuilder.Size(context, place.Then!), place.Then!.Day), PageWords.ValueOn(ExaminationBuilder.Size(context, place.Now!), place.Now!.Day),
        place.Difference is { } difference ? PageWords.ChangedBy(difference, context.Units.Difference(difference, "mm"), place.InPercent, place.MayBeSame) : "");

    private static string Name(LumpLife life) =>
        $"{Wording.NameOf(life.Key.Word)}, {SiteWords.Of(life)}".TrimEnd(',', ' ');

    private static string Place(PageContext context, PlaceChange place)
    {
        string size = place.Now is { } now ? ExaminationBuilder.Size(context, now) : "";
        return place switch
        {
            { Gone: true } => PageWords.PlaceGone(Name(place.Life), (place.Life.EndWord ?? "").Replace('-', ' '), place.Life.Ended!.Day),
            { IsNew: true } => PageWords.PlaceNew(Name(place.Life), place.Life.First.Day, size, place.Now?.Day),
            _ => PageWords.PlaceMeasured(Name(place.Life), size, place.Now!.Day),
        };
    }

    private static string Sign(SignChange sign)
    {
        string part = $"{Wording.NameOf(sign.Key.Word)} {SiteWords.Of(sign.Site, sign.Tag)}".TrimEnd();
        string word = sign.Word.Word.Replace('-', ' ');
        return sign.IsNew ? PageWords.SignNew(part, word, sign.First.Day, sign.Last.Day) : PageWords.SignGone(part, word, sign.First.Day, sign.Last.Day);
    }

    private static string Medicine(MedicineChange change) => change switch
    {
        { Begun: { } begun, Ended: { } before } => PageWords.MedicineChanged(NoteText.Field(PetCardBuilder.Plan(begun.Plan)), NoteText.Field(PetCardBuilder.Plan(before.Plan)), change.On),
        { Begun: { } begun } => PageWords.MedicineBegun(NoteText.Field(PetCardBuilder.Plan(begun.Plan)), change.On),
        _ => PageWords.MedicineEnded(NoteText.Field(change.Ended!.Plan.Medicine.Text), change.On),
    };
}
