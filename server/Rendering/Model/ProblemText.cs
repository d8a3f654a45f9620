using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Blocks;
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
    private const int QuoteRank = 2;
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

    /// <summary>What to show of it, in one line: all of it, or what matters most in so many characters.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="room">The most characters; the first thing to say of its first part always stands.</param>
    /// <param name="quotes">True to quote what the owner wrote below its lines, each behind the part that it was written of, with its day.</param>
    public string LineOf(Problem problem, int room = int.MaxValue, bool quotes = false)
    {
        int quoted = 0;
        Told[] parts = [.. problem.Parts.Select(part => Tell(part, problem)).Where(told => told.Write().Length > 0).Select((told, at) => told with { Rank = Math.Max(told.Rank, Math.Min(at, 1)) })
            .Concat(problem.Findings.Select(finding => NoteText.Field(finding.Overridden).TrimEnd('.')).Where(lowered => lowered.Length > 0).Distinct().Select(lowered => new Told(lowered, [])))];
        for (int at = 0; at < parts.Length && quotes && quoted < MostQuotes; at++)
        {
            (string day, string own) = parts[at].Part is { } part ? OwnWordsOf(problem, part) : ("", "");
            quoted += own.Length > 0 ? 1 : 0;
            parts[at] = parts[at] with { Day = day, Quote = own };
        }

        HashSet<(Told Part, int Piece)> shown = [];
        foreach ((Told part, int piece, int rank) in parts.SelectMany(part => Enumerable.Range(0, part.More.Length + 2).Select(piece => (part, piece, rank: Math.Max(part.Rank, piece == 0 ? 0 : piece <= part.More.Length ? part.More[piece - 1].Rank : QuoteRank)))).OrderBy(one => one.rank))
        {
            if (shown.Contains((part, 0)) || piece == 0)
            {
                shown.Add((part, piece));
                if (shown.Count > 1 && Write(parts, shown).Length > room)
                {
                    shown.Remove((part, piece));
                }
            }
        }

        return Write(parts, shown);
    }

    private static string Write(IEnumerable<Told> parts, HashSet<(Told Part, int Piece)> shown)
    {
        List<string> text = [];
        CourseKey? before = null;
        foreach (Told part in parts.Where(part => shown.Contains((part, 0))))
        {
            text.Add(part.Write(again: part.Key is not null && part.Key == before, piece => shown.Contains((part, piece))));
            before = part.Key;
        }

        return string.Join("; ", text);
    }

    /// <summary>A part of a problem in words: what comes first, and what more there is to say, each with its rank. What has a lower rank is the last to be left out.</summary>
    private sealed record Told(string First, (int Rank, string Text)[] More)
    {
        public ProblemPart? Part { get; init; }

        /// <summary>What stands before it, unless the part before it is about the same.</summary>
        public string Name { get; init; } = "";

        public CourseKey? Key { get; init; }

        public int Rank { get; init; }

        public bool InBrackets { get; init; }

        public string Quote { get; init; } = "";

        public string Day { get; init; } = "";

        public string Write(bool again = false, Func<int, bool>? isShown = null)
        {
            string more = string.Join(", ", More.Where((one, at) => one.Text.Length > 0 && ((InBrackets && at == 0) || isShown?.Invoke(at + 1) != false)).Select(one => one.Text));
            string head = again ? First : Name + First;
            string text = more.Length == 0 ? head : InBrackets ? $"{head} ({more})" : $"{head}, {more}";
            return Quote.Length == 0 || isShown?.Invoke(More.Length + 1) == false ? text
                : text.EndsWith($"({Day})", StringComparison.Ordinal) ? text[..^1] + $": {Quote})" : InBrackets && more.Length > 0 ? text[..^1] + $", {Day}: {Quote})" : $"{text} ({Day}: {Quote})";
        }
    }

    /// <summary>What the clinic said of it beforehand, and the conditions that it named and that no problem before it names.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="before">The problems before it.</param>
    public IEnumerable<string> ClinicOn(Problem problem, IEnumerable<Problem> before)
    {
        foreach (ExpectFact expect in context.Analysis.Note.Facts<ExpectFact>().Select(fact => fact.Fact).Where(expect => ProblemTopic.For(expect.Item.Word).System == problem.Topic.System && !(expect.Until.Latest < context.Period.Current.LastOrDefault()?.Day)))
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

    /// <summary>What the clinic asked to be phoned about, when it was there, and whether somebody phoned.</summary>
    /// <param name="problem">The problem.</param>
    public IEnumerable<Prose> AskedOf(Problem problem)
    {
        foreach (PhoneAsked asked in problem.Asked)
        {
            string title = TitleOf(problem);
            string what = asked.Value is not { } value ? problem.Parts is [PlacePart, ..] ? $"{title}: {asked.Sign}" : PageWords.Capital(asked.Sign)
                : value.Rule is { } rule ? $"{VitalOf(value, title)} {PageWords.RowMet(rule.InARow, rule.Above, Wording.Round(context.Units.Number(rule.End, rule.Unit), 1))}"
                : $"{VitalOf(value, title)} {PageWords.PastEnd(value.Clinic!.Above > 0, context.Units.Show((value.Clinic.Above > 0 ? value.Clinic.High : value.Clinic.Low)!.Value, value.Clinic.Unit))}";
            string days = asked.Days.Length <= DaysNamed ? string.Join(", ", asked.Days.Select(On)) : PageWords.OnDays(asked.Days.Length, On(asked.Days[0]), On(asked.Days[^1]));
            string said = asked.Said is { } words ? ClinicVisits.Quoted(context).Any(visit => visit.Head.Date == words.Day) ? PageWords.ClinicOf(On(words.Day)) : PageWords.ClinicSaid(On(words.Day), Clipped(words.Sentence)) : PageWords.LimitOf(Set(asked.Value!.Clinic!));
            yield return Prose.Strong(what + ":") + $" {days}. {said} {(asked.Contact is { } contact ? asked.IsOpen ? PageWords.PhonedBefore(contact.IsVisit, On(contact.Day)) : PageWords.Phoned(contact.IsVisit, On(contact.Day)) : PageWords.NotPhoned)}";
        }
    }

    private static string VitalOf(ValuePart value, string title) => NameOf(value.Key) is { Length: > 0 } name ? PageWords.Capital(string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? name : $"{title.ToLowerInvariant()} {name}") : title;

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
    public string Of(ValuePart value, string? title) => Tell(value, title).Write();

    private Told Tell(ValuePart value, string? title)
    {
        string name = title is null || string.Equals(NameOf(value.Key), title, StringComparison.OrdinalIgnoreCase) ? "" : NameOf(value.Key);
        DatedValue[] shown = [.. new[] { value.From, value.AtVisit }.OfType<DatedValue>().Append(value.Now).Concat(value.ByDay).DistinctBy(one => (one.Day, one.Time, one.Value.Number)).OrderBy(one => one.Day).ThenBy(one => one.Time)];

        // a value that stayed the same stands once, with both of its days
        bool isSame = shown.All(one => Bare(one.Value) == Bare(value.Now.Value) && one.State == value.Now.State);
        IEnumerable<DatedValue> told = isSame ? [shown[^1]] : shown.Length > 2 && value.ByDay.IsEmpty && Bare(shown[^2].Value) == Bare(value.Now.Value) ? [.. shown[..^2], shown[^1]] : shown;
        string DaysOf(DatedValue one) => one != value.Now || told.Count() == shown.Length ? VisitOr(one.Day) : $"{VisitOr(isSame ? shown[0].Day : shown[^2].Day)} and {On(one.Day)}";
        string[] steps = !value.Levels.IsEmpty ? [.. value.Levels.Select(level => LevelOf(value, level))]
            : [.. told.Select(one => (one == value.Now ? Show(one.Value) : Bare(one.Value)) + (one == value.Now || one.State != value.Now.State ? StateOf(one) : "") + (one == value.From || one == value.AtVisit || one == value.Now ? $" ({DaysOf(one)})" : ""))];
        decimal?[] seconds = [.. shown.Select(one => one.Seconds)];
        return new Told(
            $"{name} {string.Join(Arrow, steps)}".TrimStart(),
            [
                (3, value.Now.IsDifference ? PageWords.WeighedByDifference : PageWords.CountedOver(seconds)),
                (2, value.NoticedOn is { } noticed ? PageWords.NoticedOn(noticed.Word, On(noticed.Day)) : ""),
                (1, value is { InPercent: { } percent, From: { } start } && Math.Abs(percent) >= 0.5m ? PageWords.PercentIn(percent, value.Now.Day.DayNumber - start.Day.DayNumber) : ""),
                (1, value is { SinceVisit: { } since, AtVisit: not null } && Math.Abs(since) >= 0.5m ? PageWords.PercentSinceVisit(since) : ""),
                (2, value is { PerMonth: { } rate, RateSince: { } counted, Found: true } && Math.Abs(rate) >= 0.1m && counted != value.AtVisit?.Day ? PageWords.PercentAMonth(rate, On(counted)) : ""),
                (0, Clinic(value)),
                (1, Furthest(value)),
                (3, value.Clinic is { } clinic ? Set(clinic) : ""),
                (2, Besides(value)),
                (1, value is { Found: true, Normal: { } normal } && value.Key.Word is not ("weight" or "bcs" or "mcs" or "pain") ? PageWords.GeneralRange(context.Units.Show(normal)) + (value.OutsideSince < value.Now.Day ? PageWords.OutsideSince(On(value.OutsideSince.Value)) : "") : ""),
            ])
        {
            Part = value,
        };
    }

    private string VisitOr(DateOnly day) => day == context.Analysis.Record.Period.Visit?.Head.Date ? PageWords.AtVisit : On(day);

    /// <summary>A level of a score: until when it held, or since when it holds.</summary>
    private string LevelOf(ValuePart value, (DatedValue Value, DateOnly First, DateOnly Last) level)
    {
        string days = level == value.Levels[^1] ? PageWords.SinceAndLast(On(level.First), level.Last == context.Period.Check?.Day ? "" : On(level.Last), level.First == level.Last) : level == value.Levels[0] ? PageWords.UpTo(On(level.Last)) : "";
        return Show(level.Value.Value) + (days.Length == 0 ? "" : $" ({days})");
    }

    /// <summary>How it was taken, behind the value.</summary>
    private static string StateOf(DatedValue value) => value.State is { } state ? $" {state.Replace('-', ' ')}" : "";

    /// <summary>A lump or wound without its title.</summary>
    public string Of(PlacePart place) => Tell(place).Write();

    private Told Tell(PlacePart place, Problem? problem = null)
    {
        bool changed = place.Change is { Verdict: not ChangeVerdict.CannotTell };
        LumpSize[] sizes = [.. new[] { place.From }.Concat(changed ? place.Between : []).Append(place.Now).OfType<LumpSize>()];
        bool isSame = place.Life.SizeOfEachDay.DistinctBy(Size).Count() == 1;
        string[] steps = sizes is [var first, var last] && Size(first) == Size(last) ? [PageWords.SameInAll(Size(last), isSame ? place.Life.SizeOfEachDay.Length : sizes.Length, On(first.Day), On(last.Day))] : [.. sizes.Select(Step)];
        VetLook? sampled = place.Life.Looks.LastOrDefault(look => look.Sampled);
        (int Rank, string Text)[] signs = [.. Signs(place, [.. problem?.Asked.Select(asked => asked.Sign) ?? []])];
        return new Told(
            steps.Length > 0 ? string.Join(Arrow, steps) : string.Join(", ", signs.Take(1).Select(sign => sign.Text)),
            [
                (0, place.Change is not { } difference || isSame ? "" : !changed ? PageWords.NoClearChange : difference.Percent is { } percent ? PageWords.PercentIn(percent, difference.Days) : ""),
                .. signs.Skip(steps.Length > 0 ? 0 : 1),
                (0, place.Life.Ended is { } ended ? PageWords.EndedOn((place.Life.EndWord ?? "").Replace('-', ' '), On(ended.Day)) : ""),
                (1, place.Life.Looks.IsEmpty || sampled is not null || sizes.Any(size => size.Noted.AtVisit && size.Day == place.Life.Looks[^1].Day) ? "" : PageWords.SeenAtClinic(On(place.Life.Looks[^1].Day))),
                (1, sampled is null ? "" : PageWords.EndedOn(PageWords.Sampled, On(sampled.Day)) + ResultOf(sampled)),
                (2, string.Join("; ", KnownAt(place.Life).Select(text => PageWords.KnownAs(FindingText.InWords(text, context.Analysis.Today))))),
                (1, place.From?.Day == place.Life.First.Day ? "" : PageWords.FirstNotedOn(On(place.Life.First.Day))),
                (0, place.IsNewToClinic ? PageWords.NewToClinic : ""),
            ])
        { Part = place };
    }

    /// <summary>Signs at one part.</summary>
    public string Of(SignPart sign) => Tell(sign, "").Write();

    private Told Tell(SignPart sign, string title)
    {
        string name = Wording.NameOf(sign.Item.Word.Word).ToLowerInvariant();
        string place = SiteWords.Of(sign.Item.Site, sign.Item.Tag);
        string part = string.Equals(name, title, StringComparison.OrdinalIgnoreCase) ? place : PageWords.PartAt(name, place, SiteWords.IsSideOnly(sign.Item.Site));
        string words = string.Join(", ", sign.Words);

        // words that stand in some of the lines only are no words of all of them
        bool apart = sign.Together.Length < sign.Events.Select(line => line.Day).Distinct().Count();
        string joint = part.Length == 0 || words.Length == 0 || apart ? "" : sign.Item.Word.Word == "ate" && sign.Words is ["more"] or ["less"] ? " " : ": ";
        string when = !sign.Events.IsEmpty ? Happened(sign) : sign is { Unnamed: > 0, Looks: > 1 } ? PageWords.NotedTimes(sign.Looks, On(sign.First), On(sign.Last)) : PageWords.SinceAndLast(On(sign.First), On(sign.Last), sign.First == sign.Last);
        return new Told(
            apart ? "" : words,
            [
                (0, when),
                (1, !apart ? "" : sign.Together.IsEmpty ? PageWords.InPart(words) : $"{words} {(sign.Together.Length <= DaysNamed ? string.Join(", ", sign.Together.Select(On)) : PageWords.OnDays(sign.Together.Length, On(sign.Together[0]), On(sign.Together[^1])))}"),
                (2, sign is { Most: { } now, MostBefore: { } then } && now.Times > then.Times ? PageWords.MoreInADay(now.Times, then.Times) : ""),
                (1, Others(sign)),
                (1, Before(sign)),
                (1, sign.IsKnown ? PageWords.KnownToClinic : ""),
                (0, sign.Ended is not { } ended ? "" : !sign.Events.IsEmpty ? PageWords.OrdinaryOn(On(ended.Day)) : PageWords.NotSeenOn(On(ended.Day))),
            ])
        {
            Part = sign,
            Name = part + joint,
            Key = CourseKey.Of(sign.Item),
            InBrackets = true,
            Rank = sign.IsKnown || sign.Ended is not null ? 2 : 1,
        };
    }

    /// <summary>What the last line says of the part besides, and is as expected: gums that are tacky and pink.</summary>
    private string Others(SignPart sign) => !sign.Events.IsEmpty ? "" : PageWords.Otherwise(sign.Item.Words.Select(word => word.Word).Where(word => word.For(context.Analysis.Pet.Species, context.Analysis.Pet.Male != false) is { Level: Grammar.Vocabulary.Level.Expected, IsNeutral: false }).Select(word => word.Word.Replace('-', ' ')).Except(sign.Words));

    /// <summary>When the same was written before: each day with what it differs in, or how many days, of several words on how many of them all stood.</summary>
    private string Before(SignPart sign)
    {
        Noted[] days = [.. sign.Before.DistinctBy(line => line.Day)];
        if (days.Length == 0)
        {
            return "";
        }

        string OtherWords(Noted line) => SignCourse.IsOneThing(line) || line.Item!.Words.Any(word => sign.Words.Contains(word.Word.Word.Replace('-', ' '))) ? "" : string.Join(", ", line.Item.Words.Select(word => word.Word.Word.Replace('-', ' '))) + " ";
        bool isPart = sign.Words.Length > 1 && sign.BeforeTogether.Count < days.Length && sign.Events.IsEmpty;
        return PageWords.EarlierOn((sign.Events is [var one, ..] && SignCourse.IsOneThing(one) && sign.Words.Length > 0 ? PageWords.AnyKind : "")
            + (isPart ? PageWords.SomeOnDays(sign.BeforeTogether.Count, days.Length, On(days[0].Day), On(days[^1].Day)) : days.Length <= BeforeNamed ? string.Join(", ", days.Select(line => OtherWords(line) + DayOf(line))) : PageWords.OnDays(days.Length, On(days[0].Day), On(days[^1].Day))));
    }

    /// <summary>A day, and how long or how far it was then: <c>25 min on 14 Nov</c>.</summary>
    private string DayOf(Noted line) => line.Item is CareEvent care && (care.Duration ?? care.Distance) is { } extent ? PageWords.ExtentOn($"{extent.Value:0.##} {extent.Unit.Word}", On(line.Day)) : On(line.Day);

    /// <summary>How often and when it happened: a count only of what is counted, with its time where it was once.</summary>
    private string Happened(SignPart sign)
    {
        int times = sign.Events.Sum(CareWords.Times);
        Noted[] days = [.. sign.Events.DistinctBy(line => line.Day)];
        string when = IsCounted(sign) ? PageWords.TimesOnDays(times, days.Length, On(days[^1].Day)) : days.Length <= DaysNamed ? string.Join(", ", days.Select(DayOf)) : PageWords.OnDays(days.Length, On(days[0].Day), On(days[^1].Day));
        string at = sign.Item.Word.Word is "mood" or "seizure" or "vomit" && sign.Events is [{ Time: { } time, Item.Head.Time: not null }] ? $" {time:HH:mm}" : "";
        return when + at;
    }

    /// <summary>True where it says how often something happened.</summary>
    public static bool IsCounted(SignPart sign) => sign.Events.Sum(CareWords.Times) is > 0 and var times && (times > sign.Events.Length || sign.Item.Word.Word is "vomit" or "cough" or "sneeze" or "seizure");

    /// <summary>True where each day on which it happened is named.</summary>
    public static bool NamesDays(SignPart sign) => sign.Events.Select(line => line.Day).Distinct().Count() <= (IsCounted(sign) ? 1 : DaysNamed);

    private Told Tell(ProblemPart part, Problem problem) => part switch
    {
        ValuePart value => Tell(value, problem.Topic.Title),
        SignPart sign => Tell(sign, problem.Topic.Title),
        PlacePart place => Tell(place, problem),
        DosePart dose => new Told(Of(dose), []) { Part = part },
        MealsPart meals => new Told(PageWords.FoodLeft(meals.Days, On(meals.First), On(meals.Last)), []) { Part = part },
        ToldPart told => new Told(InItsWords(told, problem), []) { Part = part },
        _ => new Told("", []),
    };

    /// <summary>A finding's own words, without the title that stands before it.</summary>
    private string InItsWords(ToldPart told, Problem problem)
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
    private IEnumerable<(int Rank, string Text)> Signs(PlacePart place, string[] asked)
    {
        IEnumerable<(int, string)> ended = place.Signs.Where(sign => !sign.IsNow).OrderBy(sign => sign.Runs[^1].Last)
            .Select(sign => (asked.Contains(sign.Word) ? 0 : 1, $"{sign.Word} {string.Join(", ", sign.Runs.Select(run => PageWords.Days(run.First, run.Last, context.Analysis.Today)))}{(sign.Gone is { } gone ? $" ({PageWords.NoneOn(On(gone))})" : "")}"));
        IGrouping<DateOnly, PlaceSign>[] groups = [.. place.Signs.Where(sign => sign.IsNow).GroupBy(sign => sign.Runs[^1].First).OrderBy(same => same.Key)];
        return ended.Concat(groups.Select(same => (0, string.Join(", ", same.Select(sign => sign.Word)) + (same.Key == place.Life.First.Day && groups.Length == 1 ? "" : same.Key == place.Life.Last.Day ? $" ({On(same.Key)})" : $" ({PageWords.Since(same.Key, context.Analysis.Today)})"))));
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

    private string Step(LumpSize size) => $"{Size(size)} ({VisitOr(size.Day)})";

    private string Clinic(ValuePart value)
    {
        if (value.Clinic is not { } clinic)
        {
            return "";
        }

        string range = (clinic.IsLimit ? PageWords.LimitIs(Ends(clinic)) : PageWords.UsualIs(Ends(clinic)));
        if (clinic.Worst is not { } worst)
        {
            return $"{PageWords.WithinClinic} {range}";
        }

        bool above = clinic.Above > 0;
        string often = clinic.Since <= context.Period.From ? PageWords.AllSince(On(clinic.Since.Value)) : PageWords.SomeOf(clinic.Above + clinic.Below, clinic.Of, value.Rule is null ? clinic.InARow : 0, clinic.Since is { } since ? On(since) : "");
        return $"{PageWords.PastClinic(above, range)} {often}";
    }

    /// <summary>The reading that lies furthest past what the clinic set, where it is not among those that are shown.</summary>
    private string Furthest(ValuePart value) => value is not { ByDay.IsEmpty: true, Clinic: { Worst: { } worst } clinic } || worst.Value.Number == value.Now.Value.Number ? ""
        : PageWords.WorstOf(clinic.Above > 0, Bare(worst.Value), OnAt(worst)) + (clinic.AfterInsulin is { } after ? PageWords.AfterInsulin(after) : "");

    /// <summary>The range that the clinic calls usual, beside its limit.</summary>
    private string Besides(ValuePart value) => value.Usual is not { } usual ? ""
        : usual is { InARow: > 0, Since: { } since } ? $"{PageWords.PastClinic(usual.Above > 0, PageWords.UsualIs(Ends(usual)))} {PageWords.Since(since, context.Analysis.Today)}" : PageWords.UsualAtClinic(Ends(usual));

    private string Set(ClinicRange range) => range.Set is not { } when ? "" : PageWords.SetOn(when is { Month: { } month, Day: { } day } ? On(new DateOnly(when.Year, month, day)) : when.ToString());

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
