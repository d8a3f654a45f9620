using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;

namespace HealthNotes.Analysis.Problems;

/// <summary>What the clinic asked to be phoned about and the notes since then hold, with what they say of a call.</summary>
/// <param name="Days">The days on which it was there, in order; never empty.</param>
/// <param name="Contact">The last day from the first of them on with a call to the clinic or a visit; null where the notes have none.</param>
public sealed record PhoneAsked(ImmutableArray<DateOnly> Days, (DateOnly Day, bool IsVisit)? Contact)
{
    private static readonly string[] Called = ["phoned", "rang", "rung", "called", "telephoned", "spoke"];
    // the t is that of haven't, cut at its apostrophe
    private static readonly string[] NotYet = ["not", "t", "havent", "hasnt", "didnt", "never", "nobody", "should", "shall", "will", "would", "could", "must", "if", "when", "unless", "tried", "meant", "forgot"];
    private static readonly string[] Unanswered = ["no answer", "voicemail", "engaged", "closed"];
    private static readonly string[] Clinic = ["clinic", "vet", "vets", "surgery", "practice"];

    /// <summary>The vital past the clinic's limit, or past a value so many times in a row; null where it is a sign.</summary>
    public ValuePart? Value { get; init; }

    /// <summary>The sign that the clinic's sentence names; empty where it is a vital.</summary>
    public string Sign { get; init; } = "";

    /// <summary>The sentence that asks for it; null for a limit that is written as a fact.</summary>
    public ClinicWords? Said { get; init; }

    /// <summary>True where the last day has no call after it.</summary>
    public bool IsOpen => !(Contact?.Day >= Days[^1]);

    /// <summary>All of one problem.</summary>
    internal static IEnumerable<PhoneAsked> Of(PetRecord record, Problem problem, ClinicWords? said)
    {
        foreach (ValuePart value in problem.Parts.OfType<ValuePart>())
        {
            if (value.Rule is { } rule)
            {
                yield return On(record, [rule.Day]) with { Value = value, Said = said };
            }
            else if (value.Clinic is { IsLimit: true, Days: [_, ..] days })
            {
                yield return On(record, days) with { Value = value };
            }
        }

        foreach (IGrouping<string, DateOnly> sign in said?.Seen(problem).GroupBy(seen => seen.Word, seen => seen.Day) ?? [])
        {
            yield return On(record, [.. sign.Distinct().Order()]) with { Sign = sign.Key, Said = said };
        }
    }

    private static PhoneAsked On(PetRecord record, ImmutableArray<DateOnly> days) => new(days, record.Entries.Where(entry => entry.Day >= days[0] && entry.Day <= record.Today && IsContact(entry.Entry)).OrderBy(entry => entry.Day)
        .Select(entry => ((DateOnly, bool)?)(entry.Day!.Value, entry.Entry.Head.Kind == "visit")).LastOrDefault());

    /// <summary>True for a visit, and for an entry that says that the clinic was called.</summary>
    private static bool IsContact(Entry entry) => entry.Head.Kind == "visit"
        || entry.Items.Any(item => item.Value is TextTask { Word.Word: "done" } done && IsCall(done.Text.Text))
        || entry.Texts.SelectMany(text => ClinicWords.Sentences(text.Markdown)).Any(sentence => IsCall(sentence) && ClinicWords.WordsOf(sentence).Any(Clinic.Contains));

    /// <summary>True where somebody called; a call that is denied, put off or was not answered is none.</summary>
    private static bool IsCall(string text)
    {
        string[] before = [.. ClinicWords.WordsOf(text).TakeWhile(word => !Called.Contains(word))];
        return before.Length < ClinicWords.WordsOf(text).Length && !before.Any(word => NotYet.Contains(word) || word.EndsWith("n’t", StringComparison.Ordinal))
            && !Unanswered.Any(said => text.Contains(said, StringComparison.OrdinalIgnoreCase));
    }
}
