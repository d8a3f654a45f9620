using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// A word that may mean danger in what was not read: a remark, the name of a food, a line that was not understood, free text.
/// One finding a line, at the gravest word; nothing that did not happen.
/// </summary>
public sealed class DangerWordsRule : IEntryRule, IOpeningRule
{
    private static readonly FrozenSet<string> InsulinSlips = SmallWords.Of("insulin-slips");
    private static readonly FrozenSet<string> InsulinTrouble = SmallWords.Of("insulin-trouble");

    /// <summary>Its name.</summary>
    public const string RuleName = "danger-words";

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new(RuleName, "danger", 1);

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach ((int line, NoteItem item) in entry.Entry.Items)
        {
            if (item is DoseEvent { Word.Word: "gave", Note: { } note } dose && PetProfile.IsInsulin(dose.Medicine.Text) && BesideInsulin(line, note) is { } beside)
            {
                yield return beside;
            }
        }

        foreach (UnreadText text in UnreadText.In(at, entry))
        {
            if (Judge(text, at.Facts, row => (text.IsName && row.Painkiller is not null) || IsRead(row, entry.Entry) || IsPlanned(row, at.Facts) || IsExplained(row, text.Line, at.Note, entry.Entry)) is { } finding)
            {
                yield return finding;
            }
        }
    }

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at) =>
        UnreadText.NotUnderstood(at.Note.Opening.NotUnderstood.Concat(at.Note.Opening.Facts.Where(IsMisplaced).Select(fact => fact.Line)).Distinct(), at.Note.Syntax.Lines).Select(text => Judge(text, at.Facts, row => IsPlanned(row, at.Facts))).OfType<NoteFinding>();

    /// <summary>Beside a dose of insulin words weigh more: a dose too many or the wrong one, a meal that was not eaten, weakness.</summary>
    private NoteFinding? BesideInsulin(int line, FreeWords note)
    {
        var text = new SearchedText(note.Text);
        for (int index = 0; index < text.Words.Length; index++)
        {
            string word = text.Words[index].Text;
            bool slip = InsulinSlips.Contains(word);
            bool unfed = word is "eat" or "eaten" && text.IsNegated(index, 1);
            if (unfed || ((slip || InsulinTrouble.Contains(word)) && !text.IsNegated(index, 1)))
            {
                return this.At(slip ? FindingLevel.Urgent : FindingLevel.Call, line, note.Span, slip
                    ? $"Insulin, and \"{note.Text}\": if more was given than ordered, or the wrong one, phone your clinic or an emergency clinic now."
                    : $"Insulin, and \"{note.Text}\": phone the clinic. Low blood sugar can follow insulin.", "common practice, no source").WithoutAdvice();
            }
        }

        return null;
    }

    private NoteFinding? Judge(UnreadText text, PetFacts context, Func<DangerWord, bool> isKnown)
    {
        if (DangerSearch.In(text.Text, context.Pet.Species, context.Pet.Name, text.Place, isKnown) is not { } hit)
        {
            return null;
        }

        string words = hit.Span.In(text.Text).ToString();
        string happened = hit.Row.Kind == DangerKind.Sign ? "that happened" : "it was eaten or given";
        string start = text.IsName ? $"Names \"{words}\", and nothing here says that it is safe" : $"Not read, and holds \"{words}\"";
        string phone = hit.Row.Level == FindingLevel.Urgent ? "phone your clinic or an emergency clinic now" : "phone the clinic";
        return this.At(hit.Row.Level, text.Line, new(text.Span.Start + hit.Span.Start, hit.Span.Length), $"{start}: if {happened}, {phone}. {hit.Row.What}.", hit.Row.Source).WithoutAdvice();
    }

    /// <summary>An observation before the first entry is of no day, and no other rule looks at it.</summary>
    private static bool IsMisplaced(Placed<NoteItem> fact) => fact.Value.Word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care;

    /// <summary>True when a line of the entry that was read says the same: then it has its own finding.</summary>
    private static bool IsRead(DangerWord row, Entry entry) =>
        row.ReadAs.Length > 0 && entry.Items.Any(item => item.Value is CareEvent or Examined or Reading
            && (row.ReadAs.Contains(item.Value.Word.Word) || item.Value.Words.Any(sign => row.ReadAs.Contains(sign.Word.Word))));

    /// <summary>True when the same line, or the same entry, says what it is: twitching asleep, a drop of blood in season.</summary>
    private static bool IsExplained(DangerWord row, int line, Note note, Entry entry) => Says(note.Syntax.Lines[line].Text, row.Unless)
        || (!row.UnlessNear.IsEmpty && entry.Items.Select(item => item.Line).Concat(entry.NotUnderstood).Select(near => note.Syntax.Lines[near].Text)
            .Concat(entry.Texts.Select(block => block.Markdown)).Any(text => Says(text, row.UnlessNear)));

    private static bool Says(string words, ImmutableArray<string[]> phrases) => !phrases.IsEmpty && new SearchedText(words) is var text
        && phrases.Any(phrase => Enumerable.Range(0, text.Words.Length).Any(at => text.Match(at, phrase) is > 0 and var count && !text.IsNegated(at, count)));

    /// <summary>What a plan of these notes names was ordered by a vet, but for what no vet orders.</summary>
    private static bool IsPlanned(DangerWord row, PetFacts context) => !row.IsNeverSafe(context.Pet.Species) &&
        context.PlannedMedicines.Any(medicine => new SearchedText(medicine) is var name && row.Phrases.Any(phrase => Enumerable.Range(0, name.Words.Length).Any(at => name.Match(at, phrase) > 0)));
}
