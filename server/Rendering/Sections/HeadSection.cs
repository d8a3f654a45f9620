using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>What stands before the problems: who it is, what the clinic said last and ordered, medicines, what is known.</summary>
internal sealed class HeadSection
{
    /// <summary>The most words before the first problem; what does not fit stands under <see cref="Background"/>.</summary>
    private const int MostWords = 60;

    private const int OrdersNamed = 3;
    private const string Article = "the ";

    private static readonly string[] Ends = [",", " (", " since "];

    /// <summary>What falls due in so many days stands at the top.</summary>
    private const int SoonDays = 30;

    private readonly HashSet<int> told = [];
    private readonly PageContext context;
    private readonly List<(string Label, Prose Text)> first = [];
    private readonly List<(string Label, Prose Text)> later = [];

    private readonly PageModel model;

    public HeadSection(PageContext context, PageModel model, int wordsBefore)
    {
        this.context = context;
        this.model = model;
        Intro = [Identity(), PageWords.PeriodLine(Days().Min(), Days().Max(), context.Analysis.Today) + (context.Options.For == Audience.Share ? " " + PageWords.SharedSubtitle : "")];
        int room = MostWords - wordsBefore - Intro.Sum(text => Words(text.Plain)) - Words(VisitLine().Plain) - (ClinicVisits.ByVet(context) is { } seen ? Words(ByVet(seen).Plain) : 0) - (Results().Any() ? 1 : 0);
        HeadFact[] facts = [.. Facts().Select(fact => fact with { Items = [.. fact.Items.Where(item => !item.Text.IsEmpty)] })];
        var shown = new Dictionary<HeadItem, Prose>(ReferenceEqualityComparer.Instance);

        // the short form of the first of each, then of the others, as far as there is room; then the whole form of those that fit
        var labelled = new HashSet<string>();
        foreach ((HeadFact fact, HeadItem item) in facts.SelectMany(fact => fact.Items.Select((item, at) => (fact, item, at))).OrderBy(one => one.at > 0).ThenBy(one => one.fact.Rank).ThenBy(one => one.at).Select(one => (one.fact, one.item)))
        {
            int words = Words(Short(item.Text).Plain) + (labelled.Contains(fact.Label) ? 0 : Words(fact.Label));
            if (words <= room)
            {
                room -= words;
                labelled.Add(fact.Label);
                shown.Add(item, Short(item.Text));
            }
        }

        foreach (HeadItem item in facts.OrderBy(fact => fact.Rank).SelectMany(fact => fact.Items).Where(shown.ContainsKey))
        {
            Prose most = new[] { item.Text, CutAt(item.Text, ","), WithoutSince(item.Text) }.FirstOrDefault(form => Words(form.Plain) - Words(shown[item].Plain) <= room) ?? shown[item];
            room -= Words(most.Plain) - Words(shown[item].Plain);
            shown[item] = most;
        }

        foreach (HeadFact fact in facts)
        {
            Prose[] fits = [.. fact.Items.Where(shown.ContainsKey).Select(item => shown[item])];
            first.AddRange(fits.Length > 0 ? [(fact.Label, Prose.Join("; ", fits))] : []);
            told.UnionWith(fact.Items.Where(shown.ContainsKey).Select(item => item.Line).OfType<int>());

            // what is due and does not fit stands under what is due
            Prose[] left = [.. fact.Items.Where(item => item.Line is null && !(shown.TryGetValue(item, out Prose? whole) && whole == item.Text)).Select(item => item.Text)];
            later.AddRange(left.Length > 0 ? [(fact.Label, Prose.Join("; ", left))] : []);
        }
    }

    /// <summary>A fact at the top: its place in a line of those that there is room for, its label, its items.</summary>
    private sealed record HeadFact(int Rank, string Label, HeadItem[] Items);

    /// <summary>One thing under a label; <paramref name="Line"/> is that of what is due.</summary>
    private sealed record HeadItem(Prose Text, int? Line = null);

    /// <summary>Up to its first comma or bracket, and without since when.</summary>
    private static Prose Short(Prose item) => CutAt(item, Ends);

    private static Prose WithoutSince(Prose item) => CutAt(item, Ends[^1]);

    private static Prose CutAt(Prose item, params string[] ends) => item.Parts is [Words { Text: var text }] && ends.Select(end => text.IndexOf(end, StringComparison.Ordinal)).Where(at => at > 0).DefaultIfEmpty(-1).Min() is > 0 and int end ? text[..end].TrimEnd() : item;

    /// <summary>The lines below the name.</summary>
    public IReadOnlyList<Prose> Intro { get; }

    /// <summary>The lines of what is due that the head tells of, or the background.</summary>
    public IReadOnlySet<int> Told => told;

    /// <summary>What stands first.</summary>
    public Section Section => new("pet", PageWords.PetHeading,
        [.. new[] { Block.Paragraph(VisitLine()) }.Concat(Said(context.Analysis.Record.Period.Visit)).Concat(ClinicVisits.ByVet(context) is { } seen ? [Block.Paragraph(ByVet(seen)), .. Said(seen)] : Array.Empty<Block?>())
            .Concat(Results().Any() ? [Block.Paragraph(Prose.Strong(PageWords.Results)), new FreeBlock(NoteText.Block(string.Join("\n\n", Results())))] : Array.Empty<Block?>()).Append(Block.List(first.Select(Fact))).OfType<Block>()]);

    /// <summary>What did not fit there.</summary>
    public Section? Background => Section.Of("background", PageWords.Background, Block.List(later.Concat(Limits()).Select(Fact)));

    /// <summary>The name, sex, age and weight in one line.</summary>
    public string Identity() => string.Join(" \u00B7 ", new[] { Who(), Weight(), Owner() }.Where(part => part.Length > 0));

    /// <summary>Medicines given now, each with dose and interval; lines of medicines that were not read stand among them as written.</summary>
    public IEnumerable<Prose> Medicines() => MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(order => (Prose)Plan(order))
        .Concat(MedicineOrder.All(context.Analysis.Record).Where(order => order.From <= context.Analysis.Today && order.EndDay is { } end && end < context.Analysis.Today && !(end < context.Analysis.Record.CurrentFrom))
            .GroupBy(order => order.Medicine).Select(same => same.Last()).ExceptBy(MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(now => now.Medicine), order => order.Medicine)
            .Select(order => (Prose)Plan(order)))
        .Concat(context.Problems.Order().Where(IsMedicine).Where(context.IsCurrent).Take(PageLimits.ListItems).Select(line => PageWords.LineNotRead(line + 1) + " " + Prose.Quote(context.Written(line).Text)));

    private string Plan(MedicineOrder order) =>
        $"{NoteText.Field(order.Plan.Medicine.Text)} {PageWords.DoseInWords(order.Plan)}{(order.EndDay is not { } end ? "" : " " + (order.From > DateOnly.MinValue ? PageWords.Days(order.From, end, context.Analysis.Today) : PageWords.Until(PageWords.On(end, context.Analysis.Today))))}{PetCardBuilder.PerKilogram(context, order.Plan.Dose, context.Analysis.Pet.WeightOn(context.Analysis.Today))}{(order.EndDay is null && order.From > DateOnly.MinValue ? " " + PageWords.Since(order.From, context.Analysis.Today) : "")}{string.Concat(order.Plan.Manner.Where(manner => manner.Kind != Grammar.Vocabulary.StateKind.When).Select(manner => ", " + manner.Word.Replace('-', ' ')))}".TrimEnd();

    /// <summary>Texts of a fact, each once.</summary>
    public string Texts(string word) => string.Join("; ", PetCardBuilder.Texts(context, word));

    /// <summary>What was ordered or written as due and its day has passed.</summary>
    public IEnumerable<DueItem> NotCarriedOut() => Open().Where(due => due.On < context.Analysis.Today);

    private static Prose Fact((string Label, Prose Text) fact) => Prose.Strong(fact.Label + ":") + " " + fact.Text;

    private IEnumerable<DateOnly?> Days() => context.Analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= context.Analysis.Today);

    private string Who()
    {
        PetProfile pet = context.Analysis.Pet;
        string[] who = [PageWords.NameOf(pet.Species), pet.Breed is { } breed ? NoteText.Field(breed) : "", PageWords.Sex(pet.Male, pet.Neutered)?.Replace(",", "", StringComparison.Ordinal).ToLowerInvariant() ?? "", pet.AgeOn(context.Analysis.Today)?.ToString() is { } age ? (context.Options.For == Audience.Owner ? age : PageWords.ShortAge(age)) : ""];
        return string.Join(", ", who.Where(part => part.Length > 0));
    }

    private string Weight() => context.Analysis.Pet.WeightOn(context.Analysis.Today) is not { } weight ? ""
        : $"{context.Units.Show(weight.Value.Number, weight.Value.Unit)}{(weight.Day is { } day ? $" ({PageWords.On(day, context.Analysis.Today)})" : "")}";

    private string Owner() => Texts("owner");

    private IEnumerable<DueItem> Open() => DueTasks.In(context.Analysis.Record).Where(due => due.Kind is DueKind.Task or DueKind.Recheck);

    private Prose VisitLine()
    {
        CurrentPeriod period = context.Analysis.Record.Period;
        return period.Visit is not { Head: var head } ? PageWords.NoVisit
            : Prose.Strong($"{PageWords.LastVisit} {PageWords.On(head.Date!.Value, context.Analysis.Today)}") + (head.By is { } by ? $" ({NoteText.Field(by.StartsWith(Article, StringComparison.Ordinal) ? by[Article.Length..] : by)})" : "");
    }

    /// <summary>The latest results that the clinic told in the year before the last visit and since, but for what is quoted anyway.</summary>
    private IEnumerable<string> Results() => ClinicResults.Of(context.Analysis.Record, context.Analysis.Today.Plus(-ClinicVisits.VetDays), context.Analysis.Today)
        .Where(result => !ClinicVisits.Quoted(context).Any(visit => visit.Head.Date == result.Day)).TakeLast(OrdersNamed)
        .Select(result => $"{PageWords.On(result.Day, context.Analysis.Today)}: {NoteText.Clip(result.Sentence, PageLimits.FieldLength)}");

    private Prose ByVet(Entry visit) => Prose.Strong(PageWords.SeenByVet(PageWords.On(visit.Head.Date!.Value, context.Analysis.Today)));

    /// <summary>The clinic's own words at a visit.</summary>
    private static IEnumerable<Block?> Said(Entry? visit) => (visit?.Texts ?? []).Take(OrdersNamed)
        .Select(text => new FreeBlock(NoteText.Block(NoteText.Clip(text.Markdown, PageLimits.SaidLength))));

    private IEnumerable<HeadFact> Facts()
    {
        DueItem[] late = [.. NotCarriedOut().OrderBy(due => due.On)];
        yield return new HeadFact(3, PageWords.KnownLabel, [.. Known()]);
        yield return new HeadFact(0, PageWords.AllergyLabel, Items(Said("allergy")));
        yield return new HeadFact(2, PageWords.SurgeryLabel, Items(SettledUsual.Surgeries(context.Analysis.Record).Where(surgery => !(surgery.Day < context.Analysis.Record.CurrentFrom))
            .Select(surgery => (Prose)(FindingText.InWords(surgery.What, context.Analysis.Today) + (surgery.What.Contains($"{surgery.Day:yyyy-MM-dd}", StringComparison.Ordinal) ? "" : $" ({PageWords.On(surgery.Day, context.Analysis.Today)})")))));
        yield return new HeadFact(1, PageWords.MedicinesLabel, Items(Medicines().DefaultIfEmpty(PageWords.NoMedicine)));
        yield return new HeadFact(2, PageWords.NotDone, [.. late.Take(OrdersNamed).Select(due => new HeadItem((Prose)DueText.ForClinic(due, context) + $" ({PageWords.On(due.On!.Value, context.Analysis.Today)})", due.Line))]);
        yield return new HeadFact(7, PageWords.GivenLabel, [.. Given()]);
        yield return new HeadFact(6, PageWords.Ordered, [.. Ordered(late)]);

        static HeadItem[] Items(IEnumerable<Prose> texts) => [.. texts.Select(text => new HeadItem(text))];
    }

    /// <summary>The known conditions; of those that stand beside a problem or a lump, where.</summary>
    private IEnumerable<HeadItem> Known()
    {
        var text = new ProblemText(context);
        HashSet<string> beside = [.. text.KnownAtLumps()];
        SortedSet<int> problems = [];
        foreach (int index in model.Shown)
        {
            string[] fresh = [.. text.KnownAt(model.Problems[index]).Where(beside.Add)];
            problems.UnionWith(fresh.Length > 0 ? [index + 1] : []);
        }

        foreach (string known in PetCardBuilder.Texts(context, "known").Where(known => !beside.Contains(known)))
        {
            yield return new HeadItem(FindingText.InWords(known, context.Analysis.Today));
        }

        int[] lumps = [.. LumpNumbering.Of(context.Analysis.Record).Where(life => life.Life.Ended is null && text.KnownAt(life.Life).Any()).Select(life => life.Number)];
        if (problems.Count + lumps.Length > 0)
        {
            yield return new HeadItem(PageWords.SeeProblems([.. problems], lumps));
        }
    }

    private IEnumerable<Prose> Said(string word) => PetCardBuilder.Texts(context, word).Select(text => (Prose)FindingText.InWords(text, context.Analysis.Today));

    /// <summary>What is still to come soon, and what was done of the orders of the last visit.</summary>
    private IEnumerable<HeadItem> Ordered(DueItem[] late)
    {
        DateOnly today = context.Analysis.Today;
        DueItem[] open = [.. Open()];
        DateOnly[] days = [.. context.Period.Current.Select(entry => entry.Day).OfType<DateOnly>().Where(day => day <= today).Distinct().Order()];
        HashSet<int> stillOpen = [.. open.Select(one => one.Line)];
        HashSet<int> atVisit = [.. (context.Analysis.Record.Period.Visit?.Items ?? []).Select(item => item.Line)];
        foreach ((int line, NoteItem item) in context.Analysis.Record.Period.Visit?.Items ?? [])
        {
            if (item is Recheck or DueTask && !stillOpen.Contains(line))
            {
                string what = item is Recheck recheck ? $"{Analysis.Rules.Wording.NameOf(recheck.Item.Word).ToLowerInvariant()} {SiteWords.Of(recheck.Site)}".TrimEnd() : NoteText.Field(((DueTask)item).Topic.Text);
                DateOnly done = days.Length == 0 ? today : days[Math.Min(days.Length - 1, FirstDone(days, line))];
                yield return new HeadItem(PageWords.DoneOn(what, PageWords.On(done, today), item.Schedule.DayAfter(context.Analysis.Record.Period.Visit!.Head.Date) is { } on && on < done ? PageWords.On(on, today) : null));
            }
        }

        foreach (DueItem due in open.Except(late).Where(due => (due.Kind == DueKind.Task && due.On <= today.Plus(SoonDays)) || (atVisit.Contains(due.Line) && due.Task is not Act)).OrderBy(due => due.On).Take(OrdersNamed))
        {
            yield return new HeadItem((Prose)DueText.ForClinic(due, context) + (due.On is { } on ? $" ({PageWords.On(on, today)})" : ""), due.Line);
        }
    }

    /// <summary>What was done at the last visit (a vaccine, a worming), and until when it holds.</summary>
    private IEnumerable<HeadItem> Given()
    {
        DueItem[] open = [.. Open()];
        foreach ((int line, NoteItem item) in context.Analysis.Record.Period.Visit?.Items ?? [])
        {
            if (item is TextTask { Word.Word: "done" } done)
            {
                yield return new HeadItem(NoteText.Field(done.Text.Text));
            }
            else if (item is Act)
            {
                string what = Analysis.Rules.Wording.NameOf(item.Word.Word).ToLowerInvariant() + (item.Name is { } name ? $", {NoteText.Field(name.Text)}" : "");
                DateOnly? until = Array.Find(open, due => due.Line == line)?.On;
                yield return new HeadItem(PageWords.ValidUntil(what, until is { } day ? PageWords.On(day, context.Analysis.Today) : null), until is null ? null : line);
            }
        }
    }

    /// <summary>The place of the first day by which a task of the visit is done. Once done, it stays done.</summary>
    private int FirstDone(DateOnly[] days, int line)
    {
        int low = 0;
        int high = days.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = DueTasks.In(context.Analysis.Record, days[middle]).Any(due => due.Line == line) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The limits and ranges that the clinic set, and whom to reach.</summary>
    private IEnumerable<(string Label, Prose Text)> Limits()
    {
        string limits = string.Join("; ", PetCardBuilder.Limits(context));
        if (limits.Length > 0)
        {
            yield return (PageWords.LimitsLabel, limits);
        }

        foreach (string word in new[] { "vet", "clinic", "phone", "chip" })
        {
            if (Texts(word) is { Length: > 0 } text)
            {
                yield return (PageWords.ContactLabel(word), word == "chip" ? text : Telephone.Of(text));
            }
        }
    }

    private bool IsMedicine(int line) => context.Analysis.Note.Syntax.Lines[line].Text.Trim().Split(' ')[0] is { Length: > 0 } word
        && Grammar.Vocabulary.NoteVocabulary.Default.LineWords.Find(word)?.Word is "med" or "gave" or "missed" or "stop";

    /// <summary>How many words a text has; a mark between two is none.</summary>
    internal static int Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit));
}
