using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

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
    public static Reason? Of(EntryContext at, NoteItem item, Described sign, int line)
    {
        // what is worse than it was, or sudden, is more than anyone knows of
        if (item.Words.Any(word => word.Word is { Part: "any", Word: "worse" or "sudden" }))
        {
            return at.Entry.Head.Kind == "visit" ? new Reason("Noted at the visit.", null) : null;
        }

        if (Expected(at.Note, item, sign.Word.Word, at.Entry.Head.Date) is { } expected)
        {
            return expected;
        }

        if (item.Words.Any(word => word.Word.Word == VetKnows))
        {
            return new Reason("The vet knows of it.", null);
        }

        foreach (DatedFact<TextFact> fact in at.Note.Conditions)
        {
            string text = fact.Fact.Text.Text;
            if (!(fact.Day > at.Entry.Head.Date) && !NamedSite.NamesElsewhere(text, item.Site) && (NamesSign(text, item, sign.Word) || KnownSigns.Explain(text, item, sign.Word)))
            {
                return new Reason($"{(fact.Fact.Word.Word == "known" ? "Known" : "Surgery")}: {text} (line {fact.Line + 1}).", fact.Line);
            }
        }

        if (at.Entry.Head.Kind == "visit")
        {
            return new Reason("Noted at the visit.", null);
        }

        if (KnownSigns.ExplainedIn(at.Entry, item, sign.Word) is { } explained)
        {
            return new Reason($"Beside it: {explained}.", null);
        }

        return at.Entry.Head.Date is { } day && at.Earlier.SeenAtVisit(item.Word.Word, item.Site?.Name, sign.Word.Word, day) is { } seen
            ? new Reason($"Also noted at the visit of {seen.Day:yyyy-MM-dd}.", seen.Line, OnlySeen: true)
            : null;
    }

    /// <summary>The word by which an owner says that the vet has seen it.</summary>
    public const string VetKnows = "vet-knows";

    /// <summary>The <c>expect</c> line that names the part and the sign, and holds on the day; null when there is none.</summary>
    /// <param name="note">The facts.</param>
    /// <param name="item">What is written.</param>
    /// <param name="sign">The sign; null where the finding rests on all that the line says.</param>
    /// <param name="day">The day of the entry.</param>
    public static Reason? Expected(RuleContext note, NoteItem item, string? sign, DateOnly? day)
    {
        DatedFact<ExpectFact>? expect = note.Expects.FirstOrDefault(fact => !(fact.Day > day) && !(day > fact.Fact.Until.Latest) && fact.Fact.Item == item.Word
            && (fact.Fact.Site is null || fact.Fact.Site.Name == item.Site?.Name) && (fact.Fact.Tag is null || fact.Fact.Tag.Name == item.Tag?.Name)
            && (fact.Fact.Words.IsEmpty || fact.Fact.Words.Any(word => sign is null ? item.Words.Any(own => own.Word == word.Word) : word.Word.Word == sign)));
        return expect is null ? null
            : new Reason($"Expected until {expect.Fact.Until}{(expect.Fact.Per is { Who.Length: > 0 } per ? ", per " + per.Who : "")} (line {expect.Line + 1}).", expect.Line);
    }

    /// <summary>True when the text names both the part and the sign, by any of their names: <c>known dry eye</c> says nothing about dry gums.</summary>
    private static bool NamesSign(string text, NoteItem item, DescribingWord sign) =>
        item.Word.Synonyms.Append(item.Word.Word).Any(name => KnownSigns.Says(text, name)) && sign.Synonyms.Append(sign.Word).Any(name => KnownSigns.Says(text, name));
}
