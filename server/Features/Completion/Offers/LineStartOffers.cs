using System.Collections.Immutable;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Due;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>The words a line may start with, by where it stands.</summary>
internal static class LineStartOffers
{
    private const int Last = 90;
    private const int LeadGroup = 95;
    private const int ShortLead = 4;

    /// <summary>What was asked for longer ago is another check's matter.</summary>
    private const int MostDays = 400;


    private static NoteVocabulary Vocabulary => NoteVocabulary.Default;

    /// <summary>In the opening: the facts that are not said yet, in their usual order; then those that may be said again.</summary>
    public static IEnumerable<Offer> InOpening(NoteAround note)
    {
        HashSet<LineWord> said = [.. note.OtherItems().Select(item => item.Value.Word)];
        LineWord? first = null;
        foreach (LineWord word in Vocabulary.LineWords.Terms.Where(word => FactRules.MayOpen(word, note.Document.Note.IsRules)).OrderBy(word => word.Order))
        {
            bool fact = word.Kind == WordKind.Fact;
            if (fact && said.Contains(word) && !FactRules.MayRepeat(word))
            {
                continue;
            }

            first ??= word;
            int group = !fact ? 30 : said.Contains(word) ? 20 : 10;
            yield return Word(word, group, word.Definition) with { Preselect = ReferenceEquals(word, first) && word.Word is "pet" or "species" };
        }
    }

    /// <summary>In an entry: what it lacks first, what it holds already last.</summary>
    public static IEnumerable<Offer> InEntry(NoteAround note, TimeOnly? time, ImmutableArray<MedicineOrder> plan, string kind)
    {
        Dictionary<LineWord, string> recorded = Recorded(note);
        foreach (DueItem due in DueTasks.In(note.Document.Record, note.Day).Where(due => due.On <= note.Day && due.On?.DayNumber >= note.Day.DayNumber - MostDays).Reverse())
        {
            if (due.Task is Recheck { Item: var item })
            {
                yield return new Offer(due.What, KindOf(item), kind == "log" ? 15 : 0, $"to be looked at again, due {DayWords.Iso(due.On!.Value)}")
                {
                    Label = due.What + " (recheck)",
                    Spellings = item.Synonyms,
                    Key = KeyOf(item),
                };
            }
        }

        foreach (Offer offer in MedicineOffers.GaveLines(note, time, plan, kind == "log" ? 5 : 40).Concat(AsBefore.Lines(note, time, 6)))
        {
            yield return offer;
        }

        foreach (LineWord word in Vocabulary.LineWords.Terms.OrderBy(word => word.Order))
        {
            if (word.Kind == WordKind.Fact && !FactRules.MayStandIn(word, kind))
            {
                continue;
            }

            bool there = word.Kind is WordKind.Exam or WordKind.Vital && recorded.ContainsKey(word);
            Offer offer = Word(word, there ? Last : GroupOf(word, kind), there ? recorded[word] : word.Definition);
            yield return word.Kind == WordKind.Rest ? offer with { Text = "else ok" } : offer;
            if (there && OtherSide(note, word) is { } side)
            {
                yield return Word(word, GroupOf(word, kind), $"the other side is in this entry already") with { Text = $"{word.Word} {side}" };
            }
        }

        foreach (Offer offer in Leads.Value)
        {
            yield return offer;
        }
    }

    /// <summary>The key under which a line word is explained.</summary>
    public static string KeyOf(LineWord word) => $"word:{word.Word}";

    public static CompletionKind KindOf(LineWord word) => word.Kind switch
    {
        WordKind.Fact => CompletionKind.Fact,
        WordKind.Vital => CompletionKind.Vital,
        WordKind.Exam or WordKind.Rest => CompletionKind.Part,
        WordKind.Scan => CompletionKind.Finding,
        WordKind.Care or WordKind.Act => CompletionKind.Care,
        _ => CompletionKind.Task,
    };

    /// <summary>An item to be pointed at by another line: <c>skip ear</c>, <c>recheck ear</c>, <c>usual rr</c>.</summary>
    public static Offer Word(LineWord word, int group, string detail) => new(word.Word, KindOf(word), group, detail)
    {
        Spellings = word.Synonyms,
        Key = KeyOf(word),
    };

    /// <summary>The parts and vitals an entry holds already, and in which words; after <c>else ok</c>, every part.</summary>
    public static Dictionary<LineWord, string> Recorded(NoteAround note)
    {
        var recorded = new Dictionary<LineWord, string>();
        foreach (Placed<NoteItem> item in note.OtherItems())
        {
            if (item.Value is RestOk)
            {
                foreach (LineWord part in Vocabulary.LineWords.Terms.Where(word => word.Kind == WordKind.Exam))
                {
                    recorded.TryAdd(part, "ok by else ok");
                }
            }
            else
            {
                LineWord word = item.Value is Skipped skipped ? skipped.Item : item.Value.Word;
                recorded[word] = item.Value is Skipped ? "skipped in this entry" : "in this entry already";
            }
        }

        return recorded;
    }

    private static int GroupOf(LineWord word, string kind) => (kind, word.Kind) switch
    {
        ("log", WordKind.Care) => 10,
        ("log", WordKind.Vital) => 20,
        ("log", WordKind.Scan) => 30,
        ("log", WordKind.Exam) => 32,
        ("log", WordKind.Act) => 35,
        (_, WordKind.Exam or WordKind.Vital) => 10,
        (_, WordKind.Scan) => 20,
        (_, WordKind.Rest) => 30,
        ("visit", WordKind.Fact) => 25,
        (_, WordKind.Task or WordKind.Picture or WordKind.Skip) => 50,
        (_, WordKind.Care) => 45,
        _ => 60,
    };

    /// <summary>Where a part has two sides and the entry names one of them: the other.</summary>
    private static string? OtherSide(NoteAround note, LineWord word)
    {
        if (Sides.OwnRegion(word) is not { Sides: SideRule.Pair })
        {
            return null;
        }

        bool left = false;
        bool right = false;
        foreach (Placed<NoteItem> item in note.OtherItems())
        {
            if (item.Value is RestOk)
            {
                return null;
            }

            bool named = ReferenceEquals(item.Value.Word, word) || (item.Value is Skipped skipped && ReferenceEquals(skipped.Item, word));
            Side side = item.Value.Site?.Side ?? Side.Both;
            left |= named && side is Side.L or Side.Both or Side.None;
            right |= named && side is Side.R or Side.Both or Side.None;
        }

        return left && !right ? "R" : right && !left ? "L" : null;
    }

    /// <summary>Phrases that stand for a line, once they are begun: an abbreviation gives way to the plain words, what was seen keeps the owner's.</summary>
    private static readonly Lazy<ImmutableArray<Offer>> Leads = new(() => [.. Vocabulary.Leads.Terms.Select(lead =>
    {
        string plain = string.Join(", ", lead.Lines.Select(line => string.Join(' ', line.Words.Prepend(line.Word))));
        bool stands = lead is { Means: LeadMeans.Plain, Lines.Length: 1 };
        return new Offer(stands ? plain : NoteFormatter.FormatLines(NoteSyntax.Parse(lead.Word), 0).First(), CompletionKind.Part, LeadGroup, stands ? lead.Definition : plain)
        {
            Label = stands ? $"{(lead.Word.Length <= ShortLead ? lead.Word.ToUpperInvariant() : lead.Word)}: {plain}" : null,
            Spellings = [lead.Word, .. lead.Synonyms],
            WhenTyped = true,
            Below = true,
            Key = $"word:{lead.Lines[0].Word}",
        };
    })]);
}
