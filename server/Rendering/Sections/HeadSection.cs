using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;
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

    /// <summary>What falls due in so many days stands at the top.</summary>
    private const int SoonDays = 30;

    private readonly HashSet<int> told = [];
    private readonly PageContext context;
    private readonly List<(string Label, Prose Text)> first = [];
    private readonly List<(string Label, Prose Text)> later = [];

    public HeadSection(PageContext context, int wordsBefore)
    {
        this.context = context;
        Intro = [Identity(), PageWords.PeriodLine(Days().Min(), Days().Max(), context.Analysis.Today) + (context.Options.For == Audience.Share ? " " + PageWords.SharedSubtitle : "")];
        int room = MostWords - wordsBefore - Intro.Sum(text => Words(text.Plain)) - Words(VisitLine().Plain);
        foreach ((string label, IEnumerable<Prose> all) in Facts())
        {
            // as much of each as there is room for: what does not fit stands there in short, and whole under the background
            List<Prose> fits = [];
            List<Prose> left = [];
            int used = Words(label);
            foreach (Prose item in all.Where(item => !item.IsEmpty))
            {
                Prose? told = new[] { item, Short(item) }.FirstOrDefault(one => used + Words(one.Plain) <= room);
                used += told is null ? 0 : Words(told.Plain);
                fits.AddRange(told is null ? [] : [told]);
                left.AddRange(told == item ? [] : [item]);
            }

            room -= fits.Count > 0 ? used : 0;
            first.AddRange(fits.Count > 0 ? [(label, Prose.Join("; ", fits))] : []);
            later.AddRange(left.Count > 0 ? [(label, Prose.Join("; ", left))] : []);
        }

        if (context.Analysis.Pet.Breed is { } breed)
        {
            later.Add((PageWords.BreedLabel, NoteText.Field(breed)));
        }
    }

    /// <summary>Up to its first comma or bracket.</summary>
    private static Prose Short(Prose item) => item.Parts is [Words { Text: var text }] && text.IndexOfAny([',', '(']) is > 0 and int at ? text[..at].TrimEnd() : item;

    /// <summary>The lines below the name.</summary>
    public IReadOnlyList<Prose> Intro { get; }

    /// <summary>The lines of what is due that the head tells of, or the background.</summary>
    public IReadOnlySet<int> Told => told;

    /// <summary>What stands first.</summary>
    public Section Section => new("pet", PageWords.PetHeading, [.. new[] { Block.Paragraph(VisitLine()) }.Concat(Said()).Append(Block.List(first.Select(Fact))).OfType<Block>()]);

    /// <summary>What did not fit there.</summary>
    public Section? Background => Section.Of("background", PageWords.Background, Block.List(later.Concat(Limits()).Select(Fact)));

    /// <summary>The name, sex, age and weight in one line.</summary>
    public string Identity() => string.Join(" \u00B7 ", new[] { Who(), Weight(), Owner() }.Where(part => part.Length > 0));

    /// <summary>Medicines given now, each with dose and interval; lines of medicines that were not read stand among them as written.</summary>
    public IEnumerable<Prose> Medicines() => MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(order => Plan(order))
        .Concat(MedicineOrder.All(context.Analysis.Record).Where(order => order.From <= context.Analysis.Today && order.EndDay is { } end && end < context.Analysis.Today && !(end < context.Analysis.Record.CurrentFrom))
            .GroupBy(order => order.Medicine).Select(same => same.Last()).ExceptBy(MedicineOrder.On(context.Analysis.Today, context.Analysis.Record).Select(now => now.Medicine), order => order.Medicine)
            .Select(order => Plan(order) + " " + PageWords.Until(PageWords.On(order.EndDay!.Value, context.Analysis.Today))))
        .Concat(context.Problems.Order().Where(IsMedicine).Where(context.IsCurrent).Take(PageLimits.ListItems).Select(line => PageWords.LineNotRead(line + 1) + " " + Prose.Quote(context.Written(line).Text)));

    private Prose Plan(MedicineOrder order) =>
        $"{NoteText.Field(order.Plan.Medicine.Text)} {ProblemText.PlanOf(order.Plan)}{PetCardBuilder.PerKilogram(context, order.Plan.Dose, context.Analysis.Pet.WeightOn(context.Analysis.Today))}".TrimEnd();

    /// <summary>Texts of a fact, each once.</summary>
    public string Texts(string word) => string.Join("; ", PetCardBuilder.Texts(context, word));

    /// <summary>What was ordered or written as due and its day has passed.</summary>
    public IEnumerable<DueItem> NotCarriedOut() => Open().Where(due => due.On < context.Analysis.Today);

    private static Prose Fact((string Label, Prose Text) fact) => Prose.Strong(fact.Label + ":") + " " + fact.Text;

    private IEnumerable<DateOnly?> Days() => context.Analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= context.Analysis.Today);

    private string Who()
    {
        PetProfile pet = context.Analysis.Pet;
        string[] who = [PageWords.NameOf(pet.Species), PageWords.Sex(pet.Male, pet.Neutered)?.Replace(",", "", StringComparison.Ordinal).ToLowerInvariant() ?? "", pet.AgeOn(context.Analysis.Today)?.ToString() ?? ""];
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
            : Prose.Strong($"{PageWords.LastVisit} {PageWords.On(head.Date!.Value, context.Analysis.Today)}") + (head.By is { } by ? $" ({NoteText.Field(by)})" : "");
    }

    /// <summary>The clinic's own words at the visit.</summary>
    private IEnumerable<Block> Said() => (context.Analysis.Record.Period.Visit?.Texts ?? []).Take(OrdersNamed)
        .Select(text => new FreeBlock(NoteText.Block(NoteText.Clip(text.Markdown, PageLimits.SaidLength))));

    private IEnumerable<(string Label, IEnumerable<Prose> Items)> Facts()
    {
        DueItem[] late = [.. NotCarriedOut().OrderBy(due => due.On)];
        told.UnionWith(late.Take(OrdersNamed).Select(due => due.Line));
        yield return (PageWords.AllergyLabel, Said("allergy"));
        yield return (PageWords.SurgeryLabel, SettledUsual.Surgeries(context.Analysis.Record).Where(surgery => !(surgery.Day < context.Analysis.Record.CurrentFrom))
            .Select(surgery => (Prose)(FindingText.InWords(surgery.What, context.Analysis.Today) + (surgery.What.Contains($"{surgery.Day:yyyy-MM-dd}", StringComparison.Ordinal) ? "" : $" ({PageWords.On(surgery.Day, context.Analysis.Today)})"))));
        yield return (PageWords.MedicinesLabel, Medicines().DefaultIfEmpty(PageWords.NoMedicine));
        yield return (PageWords.NotDone, late.Take(OrdersNamed).Select(due => (Prose)PageWords.DueIn(DueText.Of(due), PageWords.On(due.On!.Value, context.Analysis.Today))));
        yield return (PageWords.Ordered, Ordered(late));
        yield return (PageWords.KnownLabel, Said("known"));
    }

    private IEnumerable<Prose> Said(string word) => PetCardBuilder.Texts(context, word).Select(text => (Prose)FindingText.InWords(text, context.Analysis.Today));

    /// <summary>What is still to come soon, and what was done of the orders of the last visit.</summary>
    private IEnumerable<Prose> Ordered(DueItem[] late)
    {
        DateOnly today = context.Analysis.Today;
        DueItem[] open = [.. Open()];
        HashSet<int> stillOpen = [.. open.Select(one => one.Line)];
        HashSet<int> atVisit = [.. (context.Analysis.Record.Period.Visit?.Items ?? []).Select(item => item.Line)];
        foreach ((int line, NoteItem item) in context.Analysis.Record.Period.Visit?.Items ?? [])
        {
            if (item is Recheck or DueTask && !stillOpen.Contains(line))
            {
                yield return $"{(item is Recheck recheck ? $"{Analysis.Rules.Wording.NameOf(recheck.Item.Word).ToLowerInvariant()} {SiteWords.Of(recheck.Site)}".TrimEnd() : NoteText.Field(((DueTask)item).Topic.Text))}: {PageWords.IsDone}";
            }
        }

        foreach (DueItem due in open.Except(late).Where(due => (due.Kind == DueKind.Task && due.On <= today.Plus(SoonDays)) || atVisit.Contains(due.Line)).OrderBy(due => due.On).Take(OrdersNamed))
        {
            told.Add(due.Line);
            yield return due.On is { } on ? PageWords.DueIn(DueText.Of(due), PageWords.On(on, today)) : DueText.Of(due);
        }
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
