using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Puts problems into words, the same for every reader: from where, to where, how fast, since when.</summary>
internal sealed class ProblemText(PageContext context)
{
    private const int OwnWordsLength = 160;
    private const int ApartLength = 240;
    private const int MostQuotes = 2;
    private const int BeforeNamed = 3;
    private const int DaysNamed = 4;
    private const int LeastByDay = 3;
    private const string Arrow = " \u2192 ";

    /// <summary>What a problem is called.</summary>
    public static string TitleOf(Problem problem) => problem.Parts switch
    {
        [PlacePart place, ..] => TitleOf(place.Number, place.Life),
        [DosePart dose, ..] => PageWords.Capital(NoteText.Field(dose.Order?.Plan.Medicine.Text ?? dose.Medicine)),
        _ when problem.Topic.System == "medicine" && problem.Detail.Length > 0 => PageWords.Capital(NoteText.Field(problem.Detail)),
        _ => problem.Topic.Title,
    };

    /// <summary>A lump or wound under its number.</summary>
    public static string TitleOf(int number, LumpLife life) => PageWords.PlaceTitle(Wording.NameOf(life.Key.Word), number, SiteWords.Of(life));

    /// <summary>What to show of it, in one line.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="quotes">True to quote what the owner wrote below its lines, each behind the part that it was written of, with its day.</param>
    public string LineOf(Problem problem, bool quotes = false)
    {
        List<string> parts = [];
        int quoted = 0;
        for (int at = 0; at < problem.Parts.Length; at++)
        {
            ProblemPart part = problem.Parts[at];
            string text = part is SignPart sign
                ? Of(sign, problem.Topic.Title, again: at > 0 && problem.Parts[at - 1] is SignPart { Item: var before } && CourseKey.Of(before) == CourseKey.Of(sign.Item)) : Of(part, problem);
            (string day, string own) = quotes && quoted < MostQuotes && text.Length > 0 ? OwnWordsOf(problem, part) : ("", "");
            quoted += own.Length > 0 ? 1 : 0;
            parts.AddRange(text.Length == 0 ? [] : [own.Length == 0 ? text : text.EndsWith($"({day})", StringComparison.Ordinal) ? text[..^1] + $": {own})" : part is SignPart && text.EndsWith(')') ? text[..^1] + $", {day}: {own})" : $"{text} ({day}: {own})"]);
        }

        return string.Join("; ", parts.Concat(problem.Findings.Select(finding => NoteText.Field(finding.Overridden)).Where(lowered => lowered.Length > 0).Distinct()));
    }

    /// <summary>What the clinic said of it when it asked to be phoned, and the conditions that it named and that no problem before it names; nothing where it said and named nothing.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="before">The problems before it.</param>
    /// <param name="said">What the clinic said of it; null for nothing.</param>
    public IEnumerable<string> ClinicOn(Problem problem, IEnumerable<Problem> before, ClinicWords? said)
    {
        if (said is not null)
        {
            yield return ClinicVisits.Quoted(context).Any(visit => visit.Head.Date == said.Day) ? PageWords.SeeClinicsWords(On(said.Day)) : PageWords.ClinicSaid(On(said.Day), Clipped(said.Sentence));
        }

        foreach (ExpectFact expect in context.Analysis.Note.Facts<ExpectFact>().Select(fact => fact.Fact).Where(expect => ProblemTopic.For(expect.Item.Word).System == problem.Topic.System && !(expect.Until.Latest < context.Period.From)))
        {
            if (problem.Parts is not [PlacePart { Life.Site: var site }, ..] || SiteWords.Of(site) == SiteWords.Of(expect.Site))
            {
                yield return PageWords.ClinicExpects(string.Join(", ", expect.Words.Select(word => word.Word.Word.Replace('-', ' '))), On(expect.Until.Latest));
            }
        }

        string[] removed = problem.Topic.System != "mouth" ? [] : [.. context.Analysis.Record.All("tooth").SelectMany(course => course.Lines).Where(line => line.Item!.Words.Any(word => word.Word.Word == "removed")).OrderBy(line => line.Day).TakeLast(DaysNamed).Select(line => $"{SiteWords.Of(line.Item!.Site)} ({On(line.Day)})")];
        if (removed.Length > 0)
        {
            yield return PageWords.TeethRemoved(removed);
        }

        IEnumerable<string> told = before.SelectMany(KnownAt);
        string known = string.Join("; ", KnownAt(problem).Except(told).Select(text => FindingText.InWords(NoteText.Field(text), context.Analysis.Today)));
        if (known.Length > 0)
        {
            yield return $"{PageWords.KnownLabel}: {known}.";
        }
    }

    /// <summary>What the owner wrote of no single line in the last check and after it, and what was done, each with its day.</summary>
    public IEnumerable<(string Label, string Day, string Words)> ToldApart() => context.Period.Current.Where(entry => entry.Entry.Head.Kind != "visit" && !(entry.Day < context.Period.Check?.Day))
        .SelectMany(entry => entry.Entry.Texts.Where(text => text.BelongsTo is null).Select(text => (PageWords.OwnerWrites, text.Markdown.ReplaceLineEndings(" ")))
            .Concat(entry.Entry.Items.Select(item => item.Value).OfType<TextTask>().Where(task => task.Word.Word == "done" && context.Options.For != Audience.Share).Select(done => (PageWords.OwnerDid, done.Text.Text)))
            .Select(told => (told.Item1, entry.Day is { } day ? On(day) : PageWords.NoDay, Clipped(told.Item2, ApartLength))));

    /// <summary>The latest words of the owner below a line of this part, and the day of that line; a line that is the last of another part belongs there.</summary>
    private (string Day, string Words) OwnWordsOf(Problem problem, ProblemPart part)
    {
        int at = problem.Parts.IndexOf(part);
        HashSet<int> lines = [.. part.Lines.Intersect(problem.Lines)];
        lines.ExceptWith(problem.Parts.Where((other, index) => index != at && other.Lines.Length > 0 && (other.Lines[^1] != part.Lines.LastOrDefault(-1) || index < at)).Select(other => other.Lines[^1]));
        foreach (DatedEntry entry in context.Period.Current.Reverse())
        {
            string words = entry.Entry.Texts.LastOrDefault(text => text.BelongsTo is { } line && lines.Contains(line)) is { } text ? text.Markdown.ReplaceLineEndings(" ")
                : entry.Entry.Items.LastOrDefault(item => lines.Contains(item.Line) && item.Value is not DoseEvent && item.Value.Note is not null) is { Value.Note: { } note } ? note.Text : "";
            if (words.Length > 0)
            {
                return (entry.Day is { } day ? On(day) : PageWords.NoDay, PageWords.Quoted(Clipped(words)));
            }
        }

        return ("", "");
    }

    /// <summary>A value with its unit.</summary>
    public string Show(ReadValue value) => UnitOf(value.Unit) is { Length: > 0 } unit ? $"{Bare(value)} {unit}" : Bare(value);

    /// <summary>How the weight changed; the weight of now stands beside the name.</summary>
    public string WeightSince(ValuePart value) => value is { From: { } from, InPercent: { } percent } && Math.Abs(percent) >= 0.5m
        ? PageWords.PercentFrom(percent, Show(from.Value), On(from.Day)) : PageWords.AsOn(On((value.From ?? value.Now).Day));

    /// <summary>How a vital went.</summary>
    public string Of(ValuePart value, string? title)
    {
        string name = title is null ? "" : NameOf(value.Key);
        List<string> told = [];
        bool same = value.From is { } earliest && (value.AtVisit is null || Bare(value.AtVisit.Value) == Bare(earliest.Value)) && Bare(earliest.Value) == Bare(value.Now.Value);
        bool sinceVisit = value.AtVisit is { } atVisit && value.From is not null && Bare(atVisit.Value) == Bare(value.Now.Value);
        string[] steps = !value.Levels.IsEmpty ? [.. value.Levels.Select(level => LevelOf(value, level))] : same ? [PageWords.Unchanged(Show(value.Now.Value) + StateOf(value.Now), On(value.From!.Day), On(value.Now.Day))] :
        [
            value.From is { } from ? $"{Bare(from.Value)}{(from.State == value.Now.State ? "" : StateOf(from))} ({On(from.Day)})" : "",
            value.AtVisit is { } visit && !sinceVisit ? $"{Bare(visit.Value)} ({(visit.Day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(visit.Day))})" : "",
            sinceVisit ? PageWords.Unchanged(Show(value.Now.Value), value.AtVisit!.Day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(value.AtVisit.Day), On(value.Now.Day)) : $"{Show(value.Now.Value)}{StateOf(value.Now)} ({On(value.Now.Day)})",
        ];
        told.Add(string.Join(Arrow, steps.Where(step => step.Length > 0)));
        told.Add(value.Now.Seconds is { } seconds ? PageWords.CountedOver(seconds, all: (value.From ?? value.Now).Seconds == seconds && (sinceVisit ? value.Now : value.AtVisit ?? value.Now).Seconds == seconds) : value.Now.IsDifference ? PageWords.WeighedByDifference : "");
        told.Add(value.NoticedOn is { } noticed ? PageWords.NoticedOn(noticed.Word, On(noticed.Day)) : "");
        told.Add(value is { InPercent: { } percent, From: { } start } && Math.Abs(percent) >= 0.5m ? PageWords.PercentIn(percent, value.Now.Day.DayNumber - start.Day.DayNumber) : "");
        told.Add(value is { SinceVisit: { } since, AtVisit: not null } && Math.Abs(since) >= 0.5m ? PageWords.PercentSinceVisit(since) : "");
        told.Add(value is { PerMonth: { } rate, RateSince: { } counted, Found: true } && Math.Abs(rate) >= 0.1m ? PageWords.PercentAMonth(rate, On(counted)) : "");
        told.Add(Clinic(value));
        told.Add(value.Rule is { } rule ? PageWords.RowMet(rule.InARow, rule.Above, Wording.Round(context.Units.Number(rule.End, rule.Unit), 1), On(rule.Day)) : "");
        told.Add(value.ByDay.Length < LeastByDay ? "" : PageWords.EachSince(string.Join(", ", value.ByDay.GroupBy(one => one.Day).Select(day => $"{string.Join(" and ", day.Select(one => Bare(one.Value)))} ({On(day.Key)})"))));
        told.Add(value is { Found: true, Normal: { } normal } && value.Key.Word is not ("weight" or "bcs" or "mcs" or "pain") ? PageWords.GeneralRange(context.Units.Show(normal)) : "");
        string text = string.Join(", ", told.Where(part => part.Length > 0));
        return name.Length == 0 || string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? text : $"{name} {text}";
    }

    /// <summary>A level of a score: until when it held, or since when it holds.</summary>
    private string LevelOf(ValuePart value, (DatedValue Value, DateOnly First, DateOnly Last) level)
    {
        string days = level == value.Levels[^1] ? PageWords.SinceAndLast(On(level.First), On(level.Last), level.First == level.Last) : level == value.Levels[0] ? PageWords.UpTo(On(level.Last)) : PageWords.Since(level.First, context.Analysis.Today);
        return $"{Show(level.Value.Value)} ({days})";
    }

    /// <summary>How it was taken, behind the value.</summary>
    private static string StateOf(DatedValue value) => value.State is { } state ? $" {state.Replace('-', ' ')}" : "";

    /// <summary>A lump or wound without its title.</summary>
    public string Of(PlacePart place)
    {
        bool changed = place.Change is { Verdict: not ChangeVerdict.CannotTell };
        LumpSize[] sizes = [.. new[] { place.From }.Concat(changed ? place.Between : []).Append(place.Now).OfType<LumpSize>()];
        string[] steps = sizes is [var first, var last] && Size(first) == Size(last) ? [PageWords.Unchanged(Size(last), On(first.Day), On(last.Day))] : [.. sizes.Select(Step)];
        string change = place.Change is not { } difference ? "" : !changed ? PageWords.NoClearChange : difference.Percent is { } percent ? PageWords.PercentIn(percent, difference.Days) : "";
        VetLook? sampled = place.Life.Looks.LastOrDefault(look => look.Sampled);
        string[] all =
        [
            string.Join(Arrow, steps.Where(step => step.Length > 0)), change, Signs(place),
            place.Life.Ended is { } ended ? PageWords.EndedOn((place.Life.EndWord ?? "").Replace('-', ' '), On(ended.Day)) : "",
            place.Life.Looks.IsEmpty || sampled is not null || sizes.Any(size => size.Noted.AtVisit && size.Day == place.Life.Looks[^1].Day) ? "" : PageWords.SeenAtClinic(On(place.Life.Looks[^1].Day)),
            sampled is null ? "" : PageWords.EndedOn(PageWords.Sampled, On(sampled.Day)) + ResultOf(sampled),
            string.Join("; ", KnownAt(place.Life).Select(text => PageWords.KnownAs(FindingText.InWords(text, context.Analysis.Today)))),
            place.From is null || place.Life.First.Day != place.From.Day ? PageWords.FirstNotedOn(On(place.Life.First.Day)) : "",
            place.IsNewToClinic ? PageWords.NewToClinic : "",
        ];
        return string.Join(", ", all.Where(text => text.Length > 0));
    }

    /// <summary>Signs at one part.</summary>
    public string Of(SignPart sign, string title, bool again = false)
    {
        string name = Wording.NameOf(sign.Item.Word.Word).ToLowerInvariant();
        string place = SiteWords.Of(sign.Item.Site, sign.Item.Tag);
        string part = again ? "" : string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? place : PageWords.PartAt(name, place, SiteWords.IsSideOnly(sign.Item.Site));
        string when = !sign.Events.IsEmpty ? Happened(sign) : sign is { Unnamed: > 0, Looks: > 1 } ? PageWords.NotedTimes(sign.Looks, On(sign.First), On(sign.Last)) : PageWords.SinceAndLast(On(sign.First), On(sign.Last), sign.First == sign.Last);
        string before = sign.Before.IsEmpty ? "" : sign.Most is not null && sign.Before.Length > BeforeNamed ? PageWords.OnDaysSince(sign.Before.Length, On(sign.Before[0])) : sign.Before.Length <= BeforeNamed ? string.Join(", ", sign.Before.Select(On)) : PageWords.OnDays(sign.Before.Length, On(sign.Before[0]), On(sign.Before[^1]));
        string most = sign is { Most: { } now, MostBefore: { } then } && now.Times > then.Times ? PageWords.MoreInADay(now.Times, On(now.Day), then.Times, On(then.Day)) : "";
        string[] more = [when, most, before.Length == 0 ? "" : sign.Events.IsEmpty ? PageWords.EarlierOn(before) : PageWords.BeforeThat(context.Analysis.Record.Period, before), sign.IsKnown ? PageWords.KnownToClinic : "", sign.Ended is { } ended ? (!sign.Events.IsEmpty ? PageWords.OrdinaryOn(On(ended.Day)) : PageWords.NotSeenOn(On(ended.Day))) : ""];
        string amount = sign.Events is [{ Item: CareEvent care }] && (care.Duration ?? care.Distance) is { } extent ? $"{extent.Value:0.##} {extent.Unit.Word}" : "";
        string words = string.Join(", ", sign.Words);
        part = $"{part} {amount}".Trim();
        string joint = part.Length == 0 || words.Length == 0 ? "" : sign.Item.Word.Word == "ate" && sign.Words is ["more"] or ["less"] ? " " : ": ";
        return $"{part}{joint}{words} ({string.Join(", ", more.Where(text => text.Length > 0))})";
    }

    /// <summary>How often and when it happened: a count only of what is counted, with its time where it was once.</summary>
    private string Happened(SignPart sign)
    {
        int times = sign.Events.Sum(CareWords.Times);
        DateOnly[] days = [.. sign.Events.Select(line => line.Day).Distinct()];
        string when = IsCounted(sign) ? PageWords.TimesOnDays(times, days.Length, On(days[^1])) : days.Length <= DaysNamed ? string.Join(", ", days.Select(On)) : PageWords.OnDays(days.Length, On(days[0]), On(days[^1]));
        string at = sign.Item.Word.Word is "mood" or "seizure" && sign.Events is [{ Time: { } time, Item.Head.Time: not null }] ? $" {time:HH:mm}" : "";
        return when + at;
    }

    /// <summary>True where it says how often something happened.</summary>
    public static bool IsCounted(SignPart sign) => sign.Events.Sum(CareWords.Times) is > 0 and var times && (times > sign.Events.Length || sign.Item.Word.Word is "vomit" or "cough" or "sneeze" or "seizure");

    /// <summary>True where each day on which it happened is named.</summary>
    public static bool NamesDays(SignPart sign) => sign.Events.Select(line => line.Day).Distinct().Count() <= (IsCounted(sign) ? 1 : DaysNamed);

    private string Of(ProblemPart part, Problem problem) => part switch
    {
        ValuePart value => Of(value, problem.Topic.Title),
        SignPart sign => Of(sign, problem.Topic.Title),
        PlacePart place => Of(place),
        DosePart dose => Of(dose),
        MealsPart meals => PageWords.FoodLeft(meals.Days, On(meals.First), On(meals.Last)),
        ToldPart told => Told(told, problem),
        _ => "",
    };

    /// <summary>A finding's own words, without the title that stands before it.</summary>
    private string Told(ToldPart told, Problem problem)
    {
        string text = FindingText.Of(told.Finding.Found, context.Analysis.Today);
        string title = TitleOf(problem) + ":";
        return text.StartsWith(title, StringComparison.OrdinalIgnoreCase) ? text[title.Length..].TrimStart() : text;
    }

    private string Of(DosePart dose)
    {
        string[] all =
        [
            dose.Given == 0 ? "" : PageWords.DosesLogged(dose.Given),
            .. dose.Doubled.Select(cluster => PageWords.GivenTwice(cluster.Doses.Length, On(cluster.Doses[^1].Day), Clocks(cluster))),
            dose.Missed.IsEmpty ? "" : PageWords.MissedOn(Days([.. dose.Missed.Select(line => line.Day)], [.. dose.Missed.Where(line => line.Item?.Note is not null)])),
            dose.NotLogged.IsEmpty ? "" : PageWords.NotLoggedOn(Days(dose.NotLogged, [])),
        ];
        return string.Join("; ", all.Where(text => text.Length > 0));
    }

    private static string Clocks(DoseCluster cluster) => cluster.Doses.All(dose => dose.Time is not null) ? string.Join(" and ", cluster.Doses.Select(dose => $"{dose.Time:HH:mm}")) : "";

    /// <summary>Days, each with what was written of it as a remark.</summary>
    private string Days(IReadOnlyList<DateOnly> days, IReadOnlyList<Noted> remarks)
    {
        DateOnly[] all = [.. days.Distinct().Order()];
        string named = string.Join(", ", all.Take(DaysNamed).Select(day => On(day) + (remarks.FirstOrDefault(line => line.Day == day) is { Item.Note.Text: var why } ? PageWords.Because(Clipped(why)) : "")));
        return all.Length > DaysNamed ? $"{named} and {PageWords.Count(all.Length - DaysNamed, "more day")}" : named;
    }

    /// <summary>What was written beside the size: what has ended with its days, then what is there now and since when.</summary>
    private string Signs(PlacePart place)
    {
        IEnumerable<string> ended = place.Signs.Where(sign => !sign.IsNow).OrderBy(sign => sign.Runs[^1].Last)
            .Select(sign => $"{sign.Word} {string.Join(", ", sign.Runs.Select(run => PageWords.Days(run.First, run.Last, context.Analysis.Today)))}{(sign.Gone is { } gone ? $" ({PageWords.NoneOn(On(gone))})" : "")}");
        IGrouping<DateOnly, PlaceSign>[] groups = [.. place.Signs.Where(sign => sign.IsNow).GroupBy(sign => sign.Runs[^1].First).OrderBy(same => same.Key)];
        IEnumerable<string> now = groups
            .Select(same => string.Join(", ", same.Select(sign => sign.Word)) + (same.Key == place.Life.First.Day && groups.Length == 1 ? "" : same.Key == place.Life.Last.Day ? $" ({On(same.Key)})" : $" ({PageWords.Since(same.Key, context.Analysis.Today)})"));
        return string.Join(", ", ended.Concat(now));
    }

    /// <summary>The known conditions that bear on a problem's body system, as written; what names the place of a lump stands with the lump.</summary>
    public IEnumerable<string> KnownAt(Problem problem) => problem.Parts is [PlacePart, ..] ? [] : ClinicWords.KnownAt(context.Analysis, problem.Topic.System).Except(KnownAtLumps());

    /// <summary>The known conditions that name the place of a lump.</summary>
    public IEnumerable<string> KnownAt(LumpLife life) => life.Site?.Name is not { Length: > 2 } site ? []
        : PetCardBuilder.Texts(context, "known").Where(text => text.Contains(site, StringComparison.OrdinalIgnoreCase));

    /// <summary>The known conditions that name the place of a lump that the page shows.</summary>
    public IEnumerable<string> KnownAtLumps() => LumpNumbering.Of(context.Analysis.Record).Where(life => life.Life.Ended is null).SelectMany(life => KnownAt(life.Life)).Distinct();

    /// <summary>What the clinic wrote of a sample, where the visit is not quoted at the top.</summary>
    private string ResultOf(VetLook sampled) => ClinicVisits.Quoted(context).Any(visit => visit.Head.Date == sampled.Day) ? ""
        : ClinicResults.Of(context.Analysis.Record, sampled.Day, sampled.Day).Select(result => PageWords.Because(Clipped(result.Sentence))).FirstOrDefault("");

    private string Size(LumpSize size) => ExaminationBuilder.Size(context, size);

    private string Step(LumpSize size) => $"{Size(size)} ({(size.Day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(size.Day))})";

    private string Clinic(ValuePart value)
    {
        if (value.Clinic is not { } clinic)
        {
            return "";
        }

        string usual = value.Usual is not { } besides ? "" : besides is { InARow: > 0, Since: { } pastSince } ? $", {PageWords.PastClinic(besides.Above > 0, PageWords.UsualIs(Ends(besides)))} {PageWords.Since(pastSince, context.Analysis.Today)}" : $", {PageWords.UsualAtClinic(Ends(besides))}";
        string range = (clinic.IsLimit ? PageWords.LimitIs(Ends(clinic)) : PageWords.UsualIs(Ends(clinic))) + (clinic.Set is { } when ? PageWords.SetOn(when is { Month: { } month, Day: { } day } ? On(new DateOnly(when.Year, month, day)) : when.ToString()) : "");
        if (clinic.Worst is not { } worst)
        {
            return $"{PageWords.WithinClinic} {range}{usual}";
        }

        bool above = clinic.Above > 0;
        string often = clinic.Since <= context.Period.From ? PageWords.AllSince(On(clinic.Since.Value)) : PageWords.SomeOf(clinic.Above + clinic.Below, clinic.Of, value.Rule is null ? clinic.InARow : 0, clinic.Since is { } since ? On(since) : "");
        string furthest = value.ByDay.Length >= LeastByDay || worst.Value.Number == value.Now.Value.Number ? "" : $", {PageWords.WorstOf(above, Bare(worst.Value), OnAt(worst))}{(clinic.AfterInsulin is { } after ? PageWords.AfterInsulin(after) : "")}{(clinic.OfDay.IsEmpty ? "" : PageWords.OthersOfDay(string.Join(", ", clinic.OfDay.Select(other => $"{other.Time:HH:mm} {Bare(other.Value)}{StateOf(other)}"))))}";
        return $"{PageWords.PastClinic(above, range)} {often}{furthest}{usual}";
    }

    private string OnAt(DatedValue value) => On(value.Day) + (value.Time is { } time && value.Value.Unit == "mmol/L" ? $" {time:HH:mm}" : "");

    private string Ends(ClinicRange range) => PageWords.Between([.. new[] { range.Low, range.High }.OfType<decimal>().Select(end => Wording.Round(context.Units.Number(end, range.Unit), 1))]);

    /// <summary>What a vital is called inside a line about its system; empty where the title says it.</summary>
    private static string NameOf(CourseKey key) => (key.Word, key.Detail.Split(' ')) switch
    {
        ("weight", _) or ("glucose", _) => "",
        ("bcs", _) => "condition",
        ("mcs", _) => "muscle score",
        ("rr", ["asleep", ..]) => "asleep",
        ("rr", _) => "awake, at rest",
        ("hr", _) => "pulse",
        ("water", _) => "water",
        ("temp", [_, var place]) => place,
        ("temp", _) => "",
        _ => Wording.NameOf(key.Word).ToLowerInvariant(),
    };

    private string Bare(ReadValue value) => PageWords.Bounded(value.Bound, Number(value));

    private string Number(ReadValue value) => value.Unit switch
    {
        "kg" when context.Analysis.Pet.ShowUsUnits => context.Units.Show(value.Number, value.Unit),
        "mL/kg/d" => Wording.Round(value.Number, 0),
        _ when value.Unit.StartsWith('/') && value.Unit != "/min" => context.Units.Show(value.Number, value.Unit),
        _ => context.Units.Show(value.Number, value.Unit).Split(' ')[0],
    };

    /// <summary>The unit behind a bare number; empty where the number carries its own.</summary>
    private string UnitOf(string unit) => unit switch
    {
        "kg" when context.Analysis.Pet.ShowUsUnits => "",
        _ when unit.StartsWith('/') && unit != "/min" => "",
        "mL/kg/d" => "mL/kg a day",
        _ => context.Units.NameOf(unit),
    };

    private string On(DateOnly day) => PageWords.On(day, context.Analysis.Today);

    private static string Clipped(string words, int most = OwnWordsLength)
    {
        string clean = NoteText.Line(words.Replace("**", "", StringComparison.Ordinal));
        return clean.Length <= most ? clean : NoteText.Clip(clean, most) + "…";
    }
}
