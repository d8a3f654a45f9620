using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Puts problems into words, the same for every reader: from where, to where, how fast, since when.</summary>
internal sealed class ProblemText(PageContext context)
{
    private const int OwnWordsLength = 160;
    private const int DaysNamed = 4;
    private const string Arrow = " \u2192 ";

    /// <summary>What a problem is called.</summary>
    public static string TitleOf(Problem problem) => problem.Parts switch
    {
        [PlacePart place, ..] => TitleOf(place.Number, place.Life),
        [DosePart dose, ..] => NoteText.Field(dose.Order?.Plan.Medicine.Text ?? dose.Medicine),
        _ when problem.Topic.System == "medicine" && problem.Detail.Length > 0 => NoteText.Field(problem.Detail),
        _ => problem.Topic.Title,
    };

    /// <summary>A lump or wound under its number.</summary>
    public static string TitleOf(int number, LumpLife life) => PageWords.PlaceTitle(Wording.NameOf(life.Key.Word), number, SiteWords.Of(life));

    /// <summary>What to show of it, in one line.</summary>
    public string LineOf(Problem problem)
    {
        string[] parts = [.. problem.Parts.Select((part, at) => part is SignPart sign
            ? Of(sign, problem.Topic.Title, again: at > 0 && problem.Parts[at - 1] is SignPart { Item: var before } && ReferenceEquals(before, sign.Item)) : Of(part, problem)).Where(text => text.Length > 0)];
        return string.Join("; ", parts.Concat(problem.Findings.Select(finding => NoteText.Field(finding.Overridden)).Where(lowered => lowered.Length > 0).Distinct()));
    }

    /// <summary>The owner's own words beside its lines: the latest that are written; empty when there are none.</summary>
    public string OwnWordsOf(Problem problem)
    {
        HashSet<int> lines = [.. problem.Lines];
        foreach (DatedEntry entry in context.Period.Current.Reverse())
        {
            if (entry.Entry.Texts.LastOrDefault(text => text.BelongsTo is { } line && lines.Contains(line)) is { } text)
            {
                return Clipped(text.Markdown.ReplaceLineEndings(" "));
            }

            if (entry.Entry.Items.LastOrDefault(item => lines.Contains(item.Line) && item.Value is not DoseEvent && item.Value.Note is not null) is { Value.Note: { } note })
            {
                return Clipped(note.Text);
            }
        }

        return "";
    }

    /// <summary>A value with its unit.</summary>
    public string Show(ReadValue value) => UnitOf(value.Unit) is { Length: > 0 } unit ? $"{Bare(value)} {unit}" : Bare(value);

    /// <summary>How a vital went.</summary>
    public string Of(ValuePart value, string? title)
    {
        string name = title is null ? "" : NameOf(value.Key);
        List<string> told = [];
        bool same = value.From is { } earliest && (value.AtVisit is null || Bare(value.AtVisit.Value) == Bare(earliest.Value)) && Bare(earliest.Value) == Bare(value.Now.Value);
        string[] steps = same ? [PageWords.Unchanged(Show(value.Now.Value), On(value.From!.Day), On(value.Now.Day))] :
        [
            value.From is { } from ? $"{Bare(from.Value)} ({On(from.Day)})" : "",
            value.AtVisit is { } visit ? $"{Bare(visit.Value)} ({(visit.Day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(visit.Day))})" : "",
            $"{Show(value.Now.Value)} ({On(value.Now.Day)})",
        ];
        told.Add(string.Join(Arrow, steps.Where(step => step.Length > 0)) + (value.Now.Value is { Low: { } low, High: { } high } && low < high ? $", {PageWords.PlusMinus(Wording.Round((high - low) / 2, 0))}" : ""));
        told.Add(value is { InPercent: { } percent, From: { } start } && Math.Abs(percent) >= 0.5m ? PageWords.PercentIn(percent, value.Now.Day.DayNumber - start.Day.DayNumber) : "");
        told.Add(value is { SinceVisit: { } since, AtVisit: not null } && Math.Abs(since) >= 0.5m ? PageWords.PercentSinceVisit(since) : "");
        told.Add(value is { PerMonth: { } rate, Found: true } && Math.Abs(rate) >= 0.1m ? PageWords.PercentAMonth(rate) : "");
        told.Add(Clinic(value));
        told.Add(value is { Found: true, Normal: { } normal } && value.Key.Word is not ("weight" or "bcs" or "mcs" or "pain") ? PageWords.GeneralRange(context.Units.Show(normal)) : "");
        string text = string.Join(", ", told.Where(part => part.Length > 0));
        return name.Length == 0 || string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? text : $"{name} {text}";
    }

    /// <summary>A lump or wound without its title.</summary>
    public string Of(PlacePart place)
    {
        string[] steps = [Step(place.From), Step(place.AtVisit), Step(place.Now)];
        string change = place.Change is not { } sizes ? ""
            : sizes.Verdict == ChangeVerdict.CannotTell ? PageWords.NoClearChange
            : sizes.Percent is { } percent ? PageWords.PercentIn(percent, sizes.Days) : "";
        VetLook? sampled = place.Life.Looks.LastOrDefault(look => look.Sampled);
        string[] all =
        [
            string.Join(Arrow, steps.Where(step => step.Length > 0)), change, Signs(place),
            place.Life.Ended is { } ended ? PageWords.EndedOn((place.Life.EndWord ?? "").Replace('-', ' '), On(ended.Day)) : "",
            place.Life.Looks.IsEmpty || sampled is not null ? "" : PageWords.SeenAtClinic(On(place.Life.Looks[^1].Day)),
            sampled is null ? "" : PageWords.EndedOn(PageWords.Sampled, On(sampled.Day)),
            place.From is null || place.Life.First.Day != place.From.Day ? PageWords.FirstNotedOn(On(place.Life.First.Day)) : "",
        ];
        return string.Join(", ", all.Where(text => text.Length > 0));
    }

    /// <summary>Signs at one part.</summary>
    public string Of(SignPart sign, string title, bool again = false)
    {
        string name = Wording.NameOf(sign.Item.Word.Word).ToLowerInvariant();
        string place = SiteWords.Of(sign.Item.Site, sign.Item.Tag);
        string part = again ? "" : string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? place : $"{name} {place}".TrimEnd();
        string when = sign.Times > 0 ? PageWords.TimesOnDays(sign.Times, sign.Days, On(sign.Last)) : PageWords.SinceAndLast(On(sign.First), On(sign.Last), sign.First == sign.Last, sign.HasGaps);
        string[] more = [when, sign.IsKnown ? PageWords.KnownToClinic : "", sign.Ended is { } ended ? (sign.Times > 0 ? PageWords.OrdinaryOn(On(ended.Day)) : PageWords.NotSeenOn(On(ended.Day))) : ""];
        string words = string.Join(", ", sign.Words);
        return $"{part}{(part.Length > 0 && words.Length > 0 ? " " : "")}{words} ({string.Join(", ", more.Where(text => text.Length > 0))})";
    }

    private string Of(ProblemPart part, Problem problem) => part switch
    {
        ValuePart value => Of(value, problem.Topic.Title),
        SignPart sign => Of(sign, problem.Topic.Title),
        PlacePart place => Of(place),
        DosePart dose => Of(dose),
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
            dose.Order is { } order ? PlanOf(order.Plan) : "",
            dose.Given == 0 ? "" : PageWords.DosesLogged(dose.Given),
            .. dose.Doubled.Select(cluster => PageWords.GivenTwice(cluster.Doses.Length, On(cluster.Doses[^1].Day), Clocks(cluster))),
            dose.Missed.IsEmpty ? "" : PageWords.MissedOn(Days(dose.Missed)),
            dose.NotLogged.IsEmpty ? "" : PageWords.NotLoggedOn(Days(dose.NotLogged)),
        ];
        return string.Join("; ", all.Where(text => text.Length > 0));
    }

    /// <summary>Dose and interval of a plan, without its name.</summary>
    public static string PlanOf(MedicinePlan plan) => NoteText.Field(string.Join(' ', new[]
    {
        plan.Dose is { } dose ? Spaced(ValuePrinter.Print(dose)) : "",
        plan.Schedule.Every is { } every ? $"every {Spaced(ValuePrinter.Print(every))}" : "",
        string.Join(' ', plan.Manner.Where(manner => manner.Kind == StateKind.When).Select(manner => manner.Word.Replace('-', ' '))),
    }.Where(text => text.Length > 0)));

    /// <summary><c>5mg</c> as <c>5 mg</c>.</summary>
    private static string Spaced(string amount)
    {
        int at = amount.TakeWhile(letter => !char.IsAsciiLetter(letter)).Count();
        return at > 0 && at < amount.Length && amount[at - 1] != ' ' ? amount.Insert(at, " ") : amount;
    }

    private static string Clocks(DoseCluster cluster) => cluster.Doses.All(dose => dose.Time is not null) ? string.Join(" and ", cluster.Doses.Select(dose => $"{dose.Time:HH:mm}")) : "";

    private string Days(IReadOnlyList<DateOnly> days)
    {
        DateOnly[] all = [.. days.Distinct().Order()];
        string named = string.Join(", ", all.Take(DaysNamed).Select(On));
        return all.Length > DaysNamed ? $"{named} and {PageWords.Count(all.Length - DaysNamed, "more day")}" : named;
    }

    private string Signs(PlacePart place)
    {
        DateOnly last = place.Life.Last.Day;
        string[] now = [.. place.Signs.Where(sign => sign.Day == last).Select(sign => sign.Word)];
        string[] before = [.. place.Signs.Where(sign => sign.Day != last).OrderBy(sign => sign.Day).Select(sign => $"{sign.Word} {On(sign.Day)}")];
        return string.Join(", ", before.Concat(now.Length == 0 ? [] : [$"{string.Join(", ", now)}{(place.Now?.Day == last ? "" : $" ({On(last)})")}"]));
    }

    private string Step(LumpSize? size) => size is null ? "" : $"{ExaminationBuilder.Size(context, size)} ({(size.Day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(size.Day))})";

    private string Clinic(ValuePart value)
    {
        if (value.Clinic is not { } clinic)
        {
            return "";
        }

        string set = clinic.Set is { } when ? PageWords.SetOn(when is { Month: { } month, Day: { } day } ? On(new DateOnly(when.Year, month, day)) : when.ToString()) : "";
        string[] ends = [.. new[] { clinic.Low, clinic.High }.OfType<decimal>().Select(end => Wording.Round(context.Units.Number(end, clinic.Unit), 1))];
        string range = clinic.IsLimit ? PageWords.LimitIs(ends[0]) : PageWords.UsualIs(ends[0], ends[^1]);
        return clinic.Worst is not { } worst ? $"{PageWords.WithinClinic(clinic.IsLimit)} {range}{set}"
            : PageWords.PastClinic(clinic.Above > 0, $"{range}{set}", clinic.Above + clinic.Below, clinic.Of, clinic.InARow) + (worst == value.Now ? "" : ", " + PageWords.WorstOf(clinic.Above > 0, Bare(worst.Value), On(worst.Day)));
    }

    /// <summary>What a vital is called inside a line about its system; empty where the title says it.</summary>
    private static string NameOf(CourseKey key) => (key.Word, key.Detail.Split(' ')) switch
    {
        ("glucose", [not "any", ..] state) => state[0].Replace('-', ' '),
        ("weight", _) or ("glucose", _) => "",
        ("bcs", _) => "condition",
        ("mcs", _) => "muscle",
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

    private static string Clipped(string words)
    {
        string clean = NoteText.Line(words);
        return clean.Length <= OwnWordsLength ? clean : NoteText.Clip(clean, OwnWordsLength) + "…";
    }
}
