using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Actions.OfFindings;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>What may follow a line's word: by the slots that the word takes and the line has not filled.</summary>
internal static class SlotOffers
{
    private const int Sites = 10;
    private const int Tags = 20;
    private const int Sizes = 25;
    private const int Portions = 30;
    private const int Conditions = 35;
    private const int Schedules = 42;
    private const int Words = 50;
    private const int SitesLater = 60;
    private const int Attributions = 70;
    private const int MostTopics = 20;

    public static IEnumerable<Offer> For(LineState line, Func<ImmutableArray<MedicineOrder>> plan, Func<IEnumerable<string>> pictures)
    {
        if (line.Word.Has(SlotKind.Text) || line.Word.Has(SlotKind.File))
        {
            return line.Word.Word == "done" ? DueTopics(line) : line.Word.Has(SlotKind.File) && !line.Has(TokenKind.Name) ? Pictures(pictures()) : [];
        }

        if (ScheduleOffers.AfterKeyword(line) is { } after)
        {
            return after.Concat(NumberOffers.For(line, []));
        }

        if (line.Last.Kind == TokenKind.Keyword && NoteVocabulary.Default.Before.Find(line.LastText) is not null)
        {
            return line.Word.Has(SlotKind.Medicine) ? MedicineOffers.For(line, plan(), 0) : WordOffers.Signs(line, Words);
        }

        IEnumerable<Offer> numbers = NumberOffers.For(line, line.Word.Has(SlotKind.Medicine) ? plan() : []);
        if (line.Last.Kind == TokenKind.Text)
        {
            // behind a remark every word is the writer's own; but what looks like one may be the rest of a medicine's name
            return numbers.Concat(line.Word.Has(SlotKind.Medicine) ? MedicineOffers.For(line, plan(), 0) : line.Word.Has(SlotKind.Words) && line.At.Typed.Length > 0 ? WordOffers.Signs(line, Words) : []);
        }

        return AsBefore.Rests(line, -1).Concat(numbers).Concat(NeededFirst(line) ?? line.Word.Takes.SelectMany(slot => OfSlot(line, slot.Kind, plan)));
    }

    /// <summary>What a line is about comes before all else: its item, its vital.</summary>
    private static IEnumerable<Offer>? NeededFirst(LineState line)
    {
        if (line.About is not null)
        {
            return null;
        }

        if (line.Word.Has(SlotKind.Rule))
        {
            return line.Has(TokenKind.Name) ? Items(line).Concat(ScheduleOffers.Keywords(line, 0)) : Rules(line.Note);
        }

        // behind a bare number the name of a vital may read as a unit: 12 hr; behind a place not every part has it
        return line.Word.Has(SlotKind.Vital) ? (NumberOffers.NumberBefore(line) is null ? Vitals() : []) : line.Word.Has(SlotKind.Item) ? (line.Has(TokenKind.Site) ? [] : Items(line)) : null;
    }

    private static IEnumerable<Offer> OfSlot(LineState line, SlotKind slot, Func<ImmutableArray<MedicineOrder>> plan) => slot switch
    {
        SlotKind.Species when !line.Has(TokenKind.State) => ClosedOffers.OfList("species", 0),
        SlotKind.Sex => ClosedOffers.Sex(line, 0),
        SlotKind.Units when !line.Has(TokenKind.State) => ClosedOffers.OfList("units", 0),
        SlotKind.Birth when !line.Has(TokenKind.Date) => DateOffers.Birth(line.Note.Document.Today, 0),
        SlotKind.Ok when !line.Has(TokenKind.Describing) => [WordOffers.Ok(0) with { Preselect = true }],
        SlotKind.Site or SlotKind.Node or SlotKind.Joint or SlotKind.Muscle or SlotKind.Gland or SlotKind.Tooth =>
            SiteOffers.For(line, line.Word, slot, SiteOffers.ComeFirst(line.Word, slot) ? Sites : SitesLater),
        SlotKind.AnySite when line.About is { } about && SlotTable.SiteOf(about) is { } aboutSlot =>
            SiteOffers.For(line, about, aboutSlot, Sites).Concat(TagOffers.For(line, about, Tags)),
        SlotKind.Tag => TagOffers.For(line, line.Word, Tags),
        SlotKind.Size when !line.HasValue => [new Offer("like", CompletionKind.Joining, Sizes, "a size by comparison: like pea")],
        SlotKind.FoodName or SlotKind.Analyte or SlotKind.Topic => NameOffers.For(line, slot, Portions),
        SlotKind.Portion when !line.HasValue => ClosedOffers.OfList("portion", Portions),
        SlotKind.Score when !line.HasValue => line.Word.Word == "mcs" ? ClosedOffers.OfList("mcs", Portions).Select(Scored) : Scores(line, Conditions),
        SlotKind.State => ClosedOffers.States(line, Conditions),
        SlotKind.Place when !line.Word.Has(SlotKind.State) => ClosedOffers.States(line, Conditions),
        SlotKind.Route when line.Has(TokenKind.Name) => ClosedOffers.States(line, Conditions),
        SlotKind.Medicine => MedicineOffers.For(line, plan(), 0),
        SlotKind.Schedule when line.Has(TokenKind.Name) || !line.Word.Has(SlotKind.Medicine) => ScheduleOffers.Keywords(line, Schedules),
        SlotKind.Per => Per(line),
        SlotKind.Words => WordOffers.For(line, Words),
        _ => [],
    };

    private static IEnumerable<Offer> Vitals() => NoteVocabulary.Default.LineWords.Terms
        .Where(word => word.Kind == WordKind.Vital).OrderBy(word => word.Order)
        .Select(word => LineStartOffers.Word(word, 0, word.Definition));

    /// <summary>Items for <c>recheck</c>: what this entry holds, first. For <c>skip</c>: what it lacks, first.</summary>
    private static IEnumerable<Offer> Items(LineState line)
    {
        Dictionary<LineWord, string> recorded = LineStartOffers.Recorded(line.Note);
        bool skip = line.Word.Kind == WordKind.Skip;
        foreach (LineWord word in NoteVocabulary.Default.LineWords.Terms.OrderBy(word => word.Order))
        {
            if (word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care && !word.Has(SlotKind.Medicine))
            {
                bool first = recorded.ContainsKey(word) != skip && word.Kind != WordKind.Care;
                yield return LineStartOffers.Word(word, first ? 0 : 1, recorded.GetValueOrDefault(word, word.Definition));
            }
        }
    }

    /// <summary>What was found in this note and may be accepted, each with its part. Only this offer waits for the rules.</summary>
    private static IEnumerable<Offer> Rules(NoteAround note) => note.Document.Note.IsRules ? RuleBook.Acceptable.Distinct().Order(StringComparer.Ordinal).Select(rule => new Offer(rule, CompletionKind.Value, 0, Summary(rule))) : note.Document.Analysis.Findings
        .Where(finding => finding.Level is FindingLevel.Call or FindingLevel.Watch && RuleBook.Acceptable.Contains(finding.Rule))
        .Reverse()
        .Select(finding => AcceptLine.Start(note.Document, finding))
        .Distinct().Take(MostTopics)
        .Select(start => new Offer(start, CompletionKind.Value, 0, Summary(start.Split(' ')[0])));

    private static string Summary(string rule) => RuleHelp.For(rule)?.Split('\n') is [_, { } summary, ..] ? summary : "";

    /// <summary>The pictures beside the note.</summary>
    private static IEnumerable<Offer> Pictures(IEnumerable<string> names) =>
        names.Take(MostTopics).Select(name => new Offer(name, CompletionKind.Value, 0, "beside this note"));

    /// <summary>A grade of muscle under its word: what is written is its score.</summary>
    private static Offer Scored(Offer grade) => grade with
    {
        Text = ValuePrinter.Print(LinePlace.Read($"mcs {grade.Text}").Item!.Value!),
        Label = grade.Text,
        Spellings = [grade.Text, .. grade.Spellings],
    };

    /// <summary>Every step of the word's first scale: the score is chosen by who looks, none comes first by itself.</summary>
    private static IEnumerable<Offer> Scores(LineState line, int group) => NumberEndings.For(line.Word.Word).Take(1)
        .SelectMany(scale => Steps(line.Word.Word, scale).Select(step => new Offer($"{step}{scale.Ending}", CompletionKind.Value, group, scale.Meaning) { Key = $"ending:{scale.Word}:{scale.Ending}" }));

    private static IEnumerable<int> Steps(string word, NumberEnding scale) =>
        int.TryParse(scale.Ending.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int most) ? Enumerable.Range(0, most + 1).Skip(word is "bcs" or "stool" ? 1 : 0) : [];

    private static IEnumerable<Offer> Per(LineState line)
    {
        if (line.Last.Kind == TokenKind.Name && !line.Has(TokenKind.Date))
        {
            return DateOffers.Back(line.Note, 0);
        }

        return line.Texts(TokenKind.Keyword).Contains("per", StringComparer.OrdinalIgnoreCase) ? []
            : [new Offer("per", CompletionKind.Joining, Attributions, "who said so, and when: per vet 2026-01-20")];
    }

    private static IEnumerable<Offer> DueTopics(LineState line) => line.Last.Kind == TokenKind.LineWord
        ? DueTasks.In(line.Note.Document.Record, line.Note.Day).Where(due => due.Task is DueTask).Reverse().Take(MostTopics)
            .Select(due => new Offer(due.What, CompletionKind.Task, 0, due.On is { } day ? $"due {DayWords.Iso(day)}" : "due"))
        : [];
}
