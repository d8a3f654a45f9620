using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Why a sign is not news: the clinic expects it, knows it or has seen it, or a condition that is written explains it. Never for what is urgent.</summary>
/// <param name="Text">How it reads, as a sentence.</param>
/// <param name="Line">The line that says so; null where it is the sign's own.</param>
/// <param name="OnlySeen">True when the clinic has seen it before, and said nothing of what comes: a reason to phone stays one, since it may have come back.</param>
internal sealed record Reason(string Text, int? Line, bool OnlySeen = false)
{
    /// <summary>The level that is left.</summary>
    public FindingLevel Quieted(FindingLevel level) => OnlySeen && level == FindingLevel.Call ? level : FindingLevel.Info;

    /// <summary>The first that holds for a sign; null when there is none.</summary>
    public static Reason? Of(PetRecord at, PetEntry entry, NoteItem item, Described sign, int line)
    {
        // what is worse than it was, or sudden, is more than anyone knows of
        if (item.Words.Any(word => word.Word is { Part: "any", Word: "worse" or "sudden" }))
        {
            return entry.Entry.Head.Kind == "visit" ? new Reason("Noted at the visit.", null) : null;
        }

        if (Expected(at.Facts, item, sign.Word.Word, entry.Entry.Head.Date) is { } expected)
        {
            return expected;
        }

        if (item.Words.Any(word => word.Word.Word == VetKnows))
        {
            return new Reason("The vet knows of it.", null);
        }

        // both the part and the sign, by any of their names: `known dry eye` says nothing about dry gums
        WordIndex conditions = at.Facts.Conditions;
        DatedFact<TextFact>? known = conditions.Saying(item.Word.Synonyms.Append(item.Word.Word), sign.Word.Synonyms.Append(sign.Word.Word))
            .Union(conditions.Saying(KnownSigns.ConditionsOf(item, sign.Word)))
            .Where(fact => !(fact.Day > entry.Entry.Head.Date) && !NamedSite.NamesElsewhere(fact.Fact.Text.Text, item.Site)).MinBy(fact => fact.Line);
        if (known is not null)
        {
            return new Reason($"{(known.Fact.Word.Word == "known" ? "Known" : "Surgery")}: {known.Fact.Text.Text} (line {known.Line + 1}).", known.Line);
        }

        if (entry.Entry.Head.Kind == "visit")
        {
            return new Reason("Noted at the visit.", null);
        }

        if (KnownSigns.ExplainedIn(entry.Entry, item, sign.Word) is { } explained)
        {
            return new Reason($"Beside it: {explained}.", null);
        }

        if (entry.Day is { } day && KnownSigns.DoneBefore(at, day, item, sign.Word) is { } done)
        {
            return new Reason($"Soon after: {done.Item!.Word.Word} (line {done.Line + 1}).", done.Line);
        }

        return SeenAtVisit(at, item, sign.Word.Word, entry.Day) is [var seen]
            ? new Reason($"Also noted at the visit of {seen.Day:yyyy-MM-dd}.", seen.Line, OnlySeen: true)
            : null;
    }

    /// <summary>The last line of a visit before a day that has the word, about the same part at the same place.</summary>
    private static ImmutableArray<Noted> SeenAtVisit(PetRecord at, NoteItem item, string word, DateOnly? day) =>
        at.Before(CourseKey.AtVisits(item), day, null, 0, 1, noted => LumpWords.Has(noted.Item, word));

    /// <summary>The word by which an owner says that the vet has seen it.</summary>
    public const string VetKnows = "vet-knows";

    /// <summary>The <c>expect</c> line that names the part and the sign, and holds on the day; null when there is none.</summary>
    /// <param name="note">The facts.</param>
    /// <param name="item">What is written.</param>
    /// <param name="sign">The sign; null where the finding rests on all that the line says.</param>
    /// <param name="day">The day of the entry.</param>
    public static Reason? Expected(PetFacts note, NoteItem item, string? sign, DateOnly? day)
    {
        DatedFact<ExpectFact>? expect = note.Expects[item.Word].FirstOrDefault(fact => !(fact.Day > day) && !(day > fact.Fact.Until.Latest)
            && (fact.Fact.Site is null || fact.Fact.Site.Name == item.Site?.Name) && (fact.Fact.Tag is null || fact.Fact.Tag.Name == item.Tag?.Name)
            && (fact.Fact.Words.IsEmpty || fact.Fact.Words.Any(word => sign is null ? item.Words.Any(own => own.Word == word.Word) : word.Word.Word == sign)));
        return expect is null ? null
            : new Reason($"Expected until {expect.Fact.Until}{(expect.Fact.Per is { Who.Length: > 0 } per ? ", per " + per.Who : "")} (line {expect.Line + 1}).", expect.Line);
    }
}
