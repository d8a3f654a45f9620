using CsCheck;
using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Medicines: what the note orders, on the day it holds, and never a dose of our own.</summary>
public class MedicineCompletionTests
{
    [Theory]
    [InlineData("med benazepril 5mg every 24h\n2026-10-04\n  |", "gave benazepril 5mg")]
    [InlineData("med fish oil 5ml every day\n2026-10-04\n  |", "gave fish oil 5ml")]
    [InlineData("med fish oil every day\n2026-10-04\n  |", "gave fish-oil")]
    [InlineData("med benazepril 5mg\n2026-10-04 visit\n  med benazepril 10mg every 24h\n2026-10-05\n  |", "gave benazepril 10mg")]
    [InlineData("2026-10-04 visit\n  med prednisone 1/2 tablet for 7d\n2026-10-10\n  |", "gave prednisone 1/2 tablet")]
    [InlineData("med benazepril 5mg from 2026-10-04\n2026-10-04\n  |", "gave benazepril 5mg")]
    public void A_plan_that_holds_is_offered_with_its_dose(string marked, string label) =>
        Assert.Equal(label, Offered.At(marked).Items.First(item => item.Kind == CompletionKind.Medicine).Edit.NewText);

    [Theory]
    [InlineData("2026-10-04 visit\n  med prednisone 1/2 tablet for 7d\n2026-10-11\n  |")]
    [InlineData("med prednisone 1/2 tablet until 2026-10-03\n2026-10-04\n  |")]
    [InlineData("med benazepril 5mg from 2026-10-05\n2026-10-04\n  |")]
    [InlineData("med ear drops 4 drops in-ear\n2026-10-04\n  stop ear-drops\n2026-10-05\n  |")]
    [InlineData("2026-10-05 visit\n  med benazepril 5mg\n2026-10-04\n  |")]
    public void A_plan_that_does_not_hold_is_not(string marked) =>
        Assert.DoesNotContain(Offered.At(marked).Items, item => item.Kind == CompletionKind.Medicine);

    [Fact]
    public void One_medicine_a_line() =>
        Assert.DoesNotContain(Offered.At("med carprofen 50mg\n2026-10-04\n  gave | benazepril").Items, item => item.Kind == CompletionKind.Medicine);

    [Theory]
    [InlineData("  gave |", "benazepril 5mg", "  gave benazepril 5mg")]
    [InlineData("  gave be|", "benazepril 5mg", "  gave benazepril 5mg")]
    [InlineData("  gave fish o|", "fish oil 5ml", "  gave fish oil 5ml")]
    [InlineData("  gave fish oil |", "fish oil 5ml", "  gave fish oil 5ml")]
    [InlineData("  gave benazepril |", "5mg", "  gave benazepril 5mg")]
    [InlineData("  missed |", "benazepril 5mg", "  missed benazepril 5mg")]
    [InlineData("  stop |", "fish-oil", "  stop fish-oil")]
    [InlineData("  gave benazepril 5mg PO|", "oral", "  gave benazepril 5mg oral")]
    [InlineData("  bena|", "gave benazepril 5mg", "  gave benazepril 5mg")]
    public void Names_after_gave_missed_and_stop(string line, string label, string expected)
    {
        const string note = "med benazepril 5mg every 24h\nmed fish oil 5ml\n2026-10-04\n";
        Assert.Equal(note + expected, Offered.Taking(note + line, label));
    }

    [Fact]
    public void A_medicine_without_a_plan_is_named_without_a_dose()
    {
        CompletionItem item = Offered.Item("2026-10-04\n  gave carprofen 50mg\n2026-10-05\n  gave |", "carprofen");
        Assert.Equal("carprofen", item.Edit.NewText);
        Assert.Equal("in this note, not planned for this day", item.Detail);
    }

    [Fact]
    public void How_often_is_for_the_one_who_ordered_it_to_say()
    {
        Assert.Equal(["day", "week", "month"], Offered.Labels("pet M\nmed benazepril 5mg every |"));
        Assert.Equal(["BID: every 12h"], Offered.Labels("pet M\nmed benazepril 5mg BID|"));
        Assert.DoesNotContain(Offered.Labels("pet M\nmed benazepril 5mg |"), label => label.Any(char.IsAsciiDigit));
    }

    [Fact]
    public void What_was_given_in_this_entry_says_so() =>
        Assert.StartsWith("given 2026-10-04; ", Offered.Item("med benazepril 5mg every 24h\n2026-10-04\n  gave benazepril 5mg\n  |", "gave benazepril 5mg").Detail, StringComparison.Ordinal);

    private const string TwoPlans = "species dog\nmed meloxicam 1.8mg oral every 24h with food from 2026-09-15\nmed gabapentin 200mg oral every 8h from 2026-09-14\n2026-09-16 log\n  06:45 gave meloxicam 1.8mg oral with food\n  07:00 gave gabapentin 200mg oral\n";

    [Theory]
    [InlineData("  15:00 gave |", "gabapentin 200mg oral", "meloxicam 1.8mg oral with food")]
    [InlineData("  15:00 |", "gave gabapentin 200mg oral", "gave meloxicam 1.8mg oral with food")]
    [InlineData("  07:05 gave |", "meloxicam 1.8mg oral with food", "gabapentin 200mg oral")] // both were just given: the order of their intervals
    [InlineData("\n2026-09-17 log\n  07:00 gave |", "gabapentin 200mg oral", "meloxicam 1.8mg oral with food")] // both are due, one since the night
    public void What_is_due_comes_first_and_whole(string line, string first, string last)
    {
        string[] medicines = [.. Offered.At(TwoPlans + line).Items.Where(item => item.Kind == CompletionKind.Medicine).OrderBy(item => item.SortKey, StringComparer.Ordinal).Select(item => item.Edit.NewText)];
        Assert.Equal([first, last], line.Contains("07:05", StringComparison.Ordinal) ? medicines.Order(StringComparer.Ordinal).Reverse() : medicines);
    }

    [Fact]
    public void What_was_given_within_its_interval_is_last_of_all_with_its_time()
    {
        string[] labels = Offered.Labels(TwoPlans + "  15:00 |");
        Assert.Equal("gave meloxicam 1.8mg oral with food", labels[^1]);
        Assert.StartsWith("given 06:45; planned every 24h", Offered.Item(TwoPlans + "  15:00 |", labels[^1]).Detail, StringComparison.Ordinal);
        Assert.StartsWith("due 15:00; planned every 8h", Offered.Item(TwoPlans + "  15:00 gave |", "gabapentin 200mg oral").Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dose_is_due_again_by_the_count_of_the_day_where_no_times_are_written()
    {
        const string note = "species dog\nmed gabapentin 200mg every 12h\nmed benazepril 5mg every 24h\n2026-10-04\n  gave gabapentin 200mg\n  gave benazepril 5mg\n  gave |";
        Assert.Equal(["gabapentin 200mg", "benazepril 5mg"], Offered.Labels(note));
    }

    /// <summary>Whatever the note says, an amount of medicine that is offered stands in a plan of it.</summary>
    [Fact]
    public void No_dose_is_offered_that_the_note_does_not_hold() =>
        Gen.Select(Soup.Note, Gen.OneOf("gave ", "missed ", "stop ", "med ", "gave benazepril ", "")).ForAll((soup, line) =>
        {
            Document document = Cursor.Note(soup + "\nmed benazepril 5mg\n2026-10-04\n  " + line);
            string[] plans = [.. document.Note.Facts<MedicinePlan>().Select(plan => plan.Fact.Dose).OfType<NoteValue>().Select(HealthNotes.Grammar.Formatting.ValuePrinter.Print)];
            foreach (CompletionItem item in CompletionFeature.At(document, new Place(int.MaxValue, int.MaxValue), FeatureSettings.Default).Items)
            {
                NoteItem? taken = Note.Read(Cursor.Apply(document, [item.Edit])).Entries[^1].Items.Select(i => i.Value).LastOrDefault();
                if (taken is DoseEvent { Dose: { } dose })
                {
                    Assert.Contains(HealthNotes.Grammar.Formatting.ValuePrinter.Print(dose), plans);
                }
            }
        }, iter: Effort.Times(300));
}
