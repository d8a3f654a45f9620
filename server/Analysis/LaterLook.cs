using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis;

/// <summary>
/// The later look that ends what was found: a part that was looked at again, a vital that was measured again. What happened
/// (a seizure, a dose given twice, something eaten) is ended by no look, but by a visit or an <c>accept</c> line.
/// </summary>
internal static class LaterLook
{
    /// <summary>Care words of which a later ordinary line shows that it goes on as usual. What is a reason to phone happened, and stays; only a refusal ends with the next meal.</summary>
    private static readonly string[] Refusals = ["not-eating", "not-drinking"];
    private static readonly string[] GoesOn = ["ate", "water", "pee", "stool", "vomit", "walk", "mood", "sleep"];

    /// <summary>How a pet is as a whole: that it is bright again, or that all else is ok, ends what was odd in these.</summary>
    private static readonly string[] Behaviour = ["mood", "sleep"];

    /// <summary>Rules about what happened, whatever the line is about.</summary>
    private static readonly string[] Happened = [DangerWordsRule.RuleName, "allergy", "human-painkiller", "together"];

    /// <summary>Words of a <c>done</c> line that say that the clinic was reached.</summary>
    private static readonly string[] Reached = ["clinic", "vet", "phoned", "rang", "called", "telephoned"];

    /// <summary>The latest look at what a finding is about, when it is later than the finding; null when there is none.</summary>
    public static Noted? At(NoteAnalysis analysis, NoteFinding finding)
    {
        if (Happened.Contains(finding.Rule) || analysis.Note.EntryAt(finding.Line) is not { Head.Date: not null } entry
            || Observations.At(Observations.In(entry, finding.Line), finding.Span) is not { } item)
        {
            return null;
        }

        (EntryHead Head, TimeOnly? Time, int Line) found = (entry.Head, item.Head.Time ?? entry.Head.Time, finding.Line);
        if (finding.Rule == CallIfRule.RuleName)
        {
            // the clinic asked to be phoned at this value: a better one later does not make that call
            return analysis.Record.Of(new CourseKey("done", "")).Lines.LastOrDefault(done => IsAfter(done, found) && ((TextTask)done.Item!).Text.Text.Split(' ').Any(word => Reached.Contains(word.Trim(',', '.').ToLowerInvariant())));
        }

        Noted? last = null;
        bool behaves = Behaviour.Contains(item.Word.Word) && finding.Level < FindingLevel.Call;
        foreach (Course course in item.Word.Kind == WordKind.Scan ? [analysis.Record.Of(CourseKey.Of(item))] : behaves ? analysis.Record.All(item.Word.Word).AddRange(analysis.Record.All("alert")) : analysis.Record.All(item.Word.Word))
        {
            for (int index = course.Lines.Length - 1; index >= 0 && IsAfter(course.Lines[index], found); index--)
            {
                if (course.Lines[index] is var look && (last is null || (look.Day, look.Time ?? default, look.Line).CompareTo((last.Day, last.Time ?? default, last.Line)) > 0) && Ends(analysis, finding, item, look))
                {
                    last = look;
                    break;
                }
            }
        }

        return last ?? (item.Word.Kind == WordKind.Exam || behaves ? RestLookedAt(analysis, item, found) : null);
    }

    /// <summary>Of two lines of one entry only their times tell which is the later look.</summary>
    private static bool IsAfter(Noted noted, (EntryHead Head, TimeOnly? Time, int Line) found) => noted.Day != found.Head.Date ? noted.Day > found.Head.Date
        : noted.Time is { } time && found.Time is { } before && time != before ? time > before : !ReferenceEquals(noted.Head, found.Head) && noted.Line > found.Line;

    private static bool Ends(NoteAnalysis analysis, NoteFinding finding, NoteItem item, Noted look) => look.Item is { } later && item.Word.Kind switch
    {
        WordKind.Vital => look.Reading is { } reading && analysis.Record.Entries[analysis.Note.EntryIndexAt(finding.Line)].Readings.FirstOrDefault(own => own.Line == finding.Line && own.Span == item.Value?.Span) is { } own && IsSame(own, reading),
        WordKind.Exam or WordKind.Scan => Covers(later, item),
        WordKind.Care => (finding.Level < FindingLevel.Call || Refusals.Contains(finding.Rule)) && GoesOn.Contains(item.Word.Word) && (later is NotSeen || later.Ok || (item.Word.Word != "vomit" && IsOrdinary(analysis, later))),
        _ => false,
    };

    /// <summary>A pulse while playing says nothing of one at rest; where it was felt does not matter.</summary>
    private static bool IsSame(NoteReading one, NoteReading other) => one.Comparable is { } state && other.Comparable == state && (one.What == "hr" || one.Site == other.Site);

    /// <summary>True when a look at a place takes in another place of the same part.</summary>
    private static bool Covers(NoteItem look, NoteItem part)
    {
        Site? wide = look.Site;
        Site? place = part.Site;
        bool sameSide = wide is null || wide.Side.Covers(place?.Side ?? Side.None);
        bool sameRegion = wide?.Region?.Word == place?.Region?.Word && wide?.Number == place?.Number;
        return sameSide && sameRegion && look.Tag?.Name == part.Tag?.Name;
    }

    private static bool IsOrdinary(NoteAnalysis analysis, NoteItem item) =>
        item.Words.All(word => word.Word.For(analysis.Pet.Species, analysis.Pet.Male == true) is not { Level: > Level.Expected })
        && !(item.Value is Portion portion && portion.Part < portion.Whole);

    /// <summary><c>else ok</c> of a later check speaks for every part that the check does not name.</summary>
    private static Noted? RestLookedAt(NoteAnalysis analysis, NoteItem item, (EntryHead Head, TimeOnly? Time, int Line) found)
    {
        foreach (Noted check in analysis.Record.Of(CourseKey.WholeChecks).Lines.AsEnumerable().Reverse())
        {
            if (!IsAfter(check, found))
            {
                return null;
            }

            if (check.Entry!.Items.Any(line => line.Value is RestOk) && !check.Entry.Items.Any(line => line.Value.Word == item.Word || (line.Value is Skipped skip && skip.Item == item.Word)))
            {
                return check;
            }
        }

        return null;
    }
}
