using HealthNotes.Analysis.Changes;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Drawing.Days;
using HealthNotes.Rendering.Photos;

namespace HealthNotes.Rendering.Model;

/// <summary>All that the page says, in order, as plain text that no writer has marked up yet. An empty list is a section left out.</summary>
internal sealed record PageModel(
    Audience For,
    Species Species,
    PetCard Pet,
    DateOnly Today,
    PeriodName Period,
    Attention Attention,
    Changes? Changes,
    Shown<DatedText> Questions,
    Examination Examination,
    VitalsTable Vitals,
    Shown<LabRow> Lab,
    ChartSet? Charts,
    Shown<BodyFinding> Body,
    DayGrid? Days,
    Shown<LogLine> Log,
    NotLookedAt NotLookedAt,
    Shown<DueItem> Due,
    Shown<Picture> Pictures,
    Shown<FreeText> Texts,
    NotUnderstood NotUnderstood,
    Shown<FindingItem> ToKnow,
    EarlierEntries Earlier,
    IReadOnlyList<string> Cautions)
{
    /// <summary>The caution that the page's closing line says already.</summary>
    private const string SaidByClosing = "compare";

    /// <summary>Builds the model of a page.</summary>
    public static PageModel Of(PageContext context) => new(
        context.Options.For,
        context.Analysis.Pet.Species,
        PetCardBuilder.Build(context),
        context.Analysis.Today,
        new PeriodName(context.Period.Check?.Day ?? context.Period.From, context.Period.Check is not null, context.Period.Current.Length > 0),
        AttentionBuilder.Build(context),
        ChangesBuilder.Build(context),
        TaskBuilder.Questions(context),
        ExaminationBuilder.Build(context),
        VitalsBuilder.Build(context),
        LabBuilder.Build(context),
        ChartsBuilder.Build(context),
        BodyBuilder.Build(context),
        DayGridBuilder.Build(context),
        LogBuilder.Build(context),
        NotLookedAtBuilder.Build(context),
        TaskBuilder.Due(context),
        PictureBuilder.Build(context),
        TextBuilder.Texts(context),
        TextBuilder.NotUnderstood(context),
        AttentionBuilder.ToKnow(context),
        EarlierBuilder.Build(context),
        [.. ClinicalTables.Default.Cautions.Where(caution => caution.Key != SaidByClosing).Select(caution => caution.Text)]);
}

/// <summary>The period that is shown in full.</summary>
internal sealed record PeriodName(DateOnly? From, bool FromCheck, bool HasEntries);

/// <summary>Who the notes are about. <paramref name="Contacts"/> stand in small print.</summary>
internal sealed record PetCard(string? Name, IReadOnlyList<PetFact> Facts, IReadOnlyList<PetFact> Contacts);

/// <summary>A fact under its label.</summary>
internal sealed record PetFact(string Label, IReadOnlyList<string> Values);

/// <summary>A line of the note as written, with its number from 1.</summary>
internal sealed record WrittenLine(int Number, DateOnly? Day, string Text);

/// <summary>A finding as it is shown; <paramref name="Again"/> holds the earlier days on which the same was found.</summary>
internal sealed record FindingItem(FindingLevel Level, DateOnly? Day, string Message, Shown<WrittenLine> Evidence, string Source, Shown<DateOnly?> Again);

/// <summary>The findings of the current period, and counts of what else there is.</summary>
internal sealed record Attention(Shown<FindingItem> Items, IReadOnlyDictionary<FindingLevel, int> Older, int LinesNotUnderstood);

/// <summary>What is otherwise than on a day; <paramref name="Lines"/> are plain sentences.</summary>
internal sealed record Changes(DateOnly Since, SinceWhat From, Shown<ChangedValue> Values, Shown<string> Lines);

/// <summary>A value then and now.</summary>
internal sealed record ChangedValue(string What, string Then, string Now, string Change);

/// <summary>A text of a day.</summary>
internal sealed record DatedText(DateOnly? Day, string Text);

/// <summary>What was looked at: in the check itself, and since.</summary>
internal sealed record Examination(bool HasCheck, DateOnly? Day, Shown<ExaminedPart> Check, Shown<ExaminedPart> Since);

/// <summary>A part that was looked at; <paramref name="Written"/> is empty when the line says the same in the same words.</summary>
internal sealed record ExaminedPart(DateOnly? Day, TimeOnly? Time, string Part, string Place, string Seen, string Written, FindingLevel? Level);

/// <summary>The vitals; <paramref name="Sources"/> says whose the normal ranges are.</summary>
internal sealed record VitalsTable(Shown<VitalRow> Rows, IReadOnlyList<PetFact> Sources);

/// <summary>One reading of a vital.</summary>
internal sealed record VitalRow(DateOnly? Day, TimeOnly? Time, bool InCheck, string Vital, string Written, string Value, string Taken, string Normal, string Usual, FindingLevel? Level, Verdict Verdict);

/// <summary>A laboratory value, with the laboratory's own range.</summary>
internal sealed record LabRow(DateOnly? Day, string What, string Value, string Reference, string Remark);

/// <summary>What is said of a reading that no finding is about.</summary>
internal enum Verdict
{
    /// <summary>Nothing: it is compared with nothing, or only a bound is known.</summary>
    None,

    /// <summary>Within the range shown as normal.</summary>
    AsExpected,

    /// <summary>Outside it, but within what this pet's vet calls usual.</summary>
    AsUsual,

    /// <summary>Something in its line could not be read or cannot be right, so nothing is said.</summary>
    NotUnderstood,
}

/// <summary>A lump, wound, node or sore place, with its sizes over time.</summary>
internal sealed record BodyFinding(
    BodyMark Mark, string Kind, string Place, IReadOnlyList<string> Sizes, string Change, string Seen, string State, bool IsGone, DateOnly? First, DateOnly? Last, FindingLevel? Level);

/// <summary>A line of the home-care log.</summary>
internal sealed record LogLine(DateOnly? Day, string By, TimeOnly? Time, string What, string Amount, FindingLevel? Level);

/// <summary>What was not looked at: with a reason, and without a word.</summary>
internal sealed record NotLookedAt(Shown<SkippedItem> Skipped, IReadOnlyList<string> NotMentioned, bool RestOk);

/// <summary>An item that was skipped.</summary>
internal sealed record SkippedItem(DateOnly? Day, string Item, string Reason);

/// <summary>Something due. <paramref name="Days"/> counts from today.</summary>
internal sealed record DueItem(DateOnly? On, int? Days, string What);

/// <summary>A picture beside the note; <paramref name="Photo"/> is null where only its name is shown, and then <paramref name="Problem"/> may say why.</summary>
internal sealed record Picture(DateOnly? Day, string File, string Caption, ShrunkPhoto? Photo, string? Problem);

/// <summary>A block of free text in Markdown; <paramref name="About"/> is the line it stands below, as written.</summary>
internal sealed record FreeText(DateOnly? Day, string Heading, string? About, string Markdown, bool Cut);

/// <summary>The lines that are not understood: those of the current period, and how many earlier ones.</summary>
internal sealed record NotUnderstood(Shown<WrittenLine> Lines, IReadOnlyList<int> EarlierLines, int Earlier);

/// <summary>Earlier entries, latest year first.</summary>
internal sealed record EarlierEntries(IReadOnlyList<PetFact> Years, int LeftOut, DateOnly? LeftOutFrom);
