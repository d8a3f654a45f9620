using System.Collections.Immutable;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Offers;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion;

/// <summary>What may be written where the cursor stands.</summary>
public static class CompletionFeature
{
    /// <summary>What may be written at <paramref name="place"/>, where nothing but the note is known.</summary>
    public static CompletionList At(Document document, Place place, FeatureSettings settings) => At(document, place, settings, Surroundings.Unknown);

    /// <summary>What may be written at <paramref name="place"/>.</summary>
    public static CompletionList At(Document document, Place place, FeatureSettings settings, Surroundings around)
    {
        if (LinePlace.At(document, place) is not { } at)
        {
            return CompletionList.Nothing;
        }

        var note = new NoteAround(document, at.Line, settings);
        var plan = new Lazy<ImmutableArray<MedicineOrder>>(() => MedicineOrder.On(note.Day, note.Document.Record));
        return Offers(at, note, around, () => plan.Value) is { } offers ? OfferMatcher.Match(at, offers) : CompletionList.Nothing;
    }

    /// <summary>The explanation, in Markdown, of the offer with this key; null for a key that is not known. It needs no document.</summary>
    public static string? Resolve(string key) => Explanations.Of(key);

    private static IEnumerable<Offer>? Offers(LinePlace at, NoteAround note, Surroundings around, Func<ImmutableArray<MedicineOrder>> plan)
    {
        if (at.IsAtLineWord())
        {
            return at.Typed is ['#' or '>', ..] ? null : LineStart(at, note, around, plan);
        }

        LineSyntax read = at.WithoutWord();
        return read.Kind == LineKind.EntryHead && read.EntryHead!.DateSpan.End <= at.Start ? EntryOffers.InHead(at, note, read)
            : LineState.Of(at, note) is { } line ? SlotOffers.For(line, plan, around.Pictures)
            : null;
    }

    private static IEnumerable<Offer> LineStart(LinePlace at, NoteAround note, Surroundings around, Func<ImmutableArray<MedicineOrder>> plan)
    {
        bool timed = !string.IsNullOrWhiteSpace(at.Before);
        bool dated = at.Typed.Length > 0 && char.IsAsciiDigit(at.Typed[0]);
        bool alone = string.IsNullOrWhiteSpace(at.After);
        bool head = !timed && (at.Start == 0 || dated) && (alone || at.Document.Syntax.Lines[at.Line].Kind == LineKind.EntryHead);
        bool opening = note.Entry is null || note.Entry.Line == at.Line;
        IEnumerable<Offer> words = note.Entry is not { } entry ? LineStartOffers.InOpening(note)
            : entry.Line == at.Line ? []
            : LineStartOffers.InEntry(note, at.Time, plan(), entry.Head.Kind).Concat(timed ? [] : EntryOffers.Times(note, around.Now, plan));
        if (!head)
        {
            return words;
        }

        // in an entry at column 0 a new entry is likelier than another line of this one
        int group = opening ? 80 : -10;
        return note.Document.Note.IsRules ? words : EntryOffers.NewEntries(at, note, group).Concat(alone ? WholeEntry.For(note, group + 2) : []).Concat(words);
    }
}
