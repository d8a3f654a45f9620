using HealthNotes.Analysis.Changes;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;

namespace HealthNotes.Tests.Analysis.Changes;

/// <summary>What changed since the last visit: told from the day of the visit, never judged.</summary>
public class ChangeListTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private const string Start = "pet A\nspecies dog\nborn 2019\nmed ax 5mg every 12h from 2026-01-01\n";

    [Fact]
    public void The_day_is_the_last_visit_before_today_else_the_one_asked_for_else_the_first_entry()
    {
        const string Entries = "2026-09-01 check\n  hr 18/15s\n2026-10-01 visit\n  hr 19/15s\n2026-11-25 visit\n  hr 20/15s\n";
        Assert.Equal((new DateOnly(2026, 10, 1), SinceWhat.Visit), Since(Of(Entries)));
        Assert.Equal((new DateOnly(2026, 9, 15), SinceWhat.Asked), Since(Of(Entries, new DateOnly(2026, 9, 15))));
        Assert.Equal((new DateOnly(2026, 9, 1), SinceWhat.FirstEntry), Since(Of("2026-09-01 check\n  hr 18/15s\n2026-10-01 log\n  water 200ml\n")));
        Assert.Null(ChangeList.Of(PetRecord.Of(Note.Read(Start), Today), null));
    }

    [Fact]
    public void A_value_is_told_beside_the_last_one_up_to_the_day()
    {
        ChangeList changes = Of("2026-09-01 check\n  weight 20kg\n2026-10-01 visit\n  weight 21kg\n  temp 38.5C rectal\n2026-11-01 check\n  weight 18.9kg\n  weight ~19kg\n2026-11-02 check\n  weight 18.9kg\n  rr 6/15s asleep\n");
        Assert.Equal(["rr", "weight"], changes.Values.Select(value => value.Key.Word).Order(StringComparer.Ordinal));
        ValueChange weight = changes.Values.Single(value => value.Key.Word == "weight");
        Assert.Equal((21m, 18.9m, -2.1m, -10m, 3), (weight.Then!.Value.Number, weight.Now.Value.Number, weight.Difference, weight.InPercent, weight.Count));
        ValueChange breathing = changes.Values.Single(value => value.Key.Word == "rr");
        Assert.Null(breathing.Then);
        Assert.Null(breathing.Difference);
    }

    [Fact]
    public void A_count_more_or_less_may_make_up_the_difference()
    {
        Assert.True(Of("2026-10-01 visit\n  hr 18/15s\n2026-11-01 check\n  hr 20/15s\n").Values.Single().WithinCounting);
        Assert.False(Of("2026-10-01 visit\n  hr 18/15s\n2026-11-01 check\n  hr 21/15s\n").Values.Single().WithinCounting);
        Assert.False(Of("2026-10-01 visit\n  hr 72\n2026-11-01 check\n  hr 76\n").Values.Single().WithinCounting);
    }

    [Fact]
    public void A_bound_has_no_difference()
    {
        ValueChange change = Of("2026-10-01 visit\n  crt <2s\n2026-11-01 check\n  crt 1.5s\n").Values.Single();
        Assert.Null(change.Difference);
    }

    [Fact]
    public void Lumps_are_new_of_another_size_or_gone()
    {
        ChangeList changes = Of("""
            2026-10-01 visit
              lump L-flank 10mm
              lump R-flank 8mm
              wound R-thigh 20mm
            2026-11-01 check
              lump L-flank 14x9mm
              lump R-ribs like pea
              wound R-thigh healed
            """);
        Assert.Equal(
            [("R-ribs", true, false), ("L-flank", false, false), ("R-thigh", false, true)],
            changes.Places.Select(place => (place.Life.Name, place.IsNew, place.Gone)));
        PlaceChange grown = changes.Places.Single(place => place.Life.Name == "L-flank");
        Assert.Equal((4m, 40m, false), (grown.Difference, grown.InPercent, grown.MayBeSame));
        Assert.True(Of("2026-10-01 visit\n  lump L-flank 10mm\n2026-11-01 check\n  lump L-flank 11mm\n").Places.Single().MayBeSame);
    }

    [Fact]
    public void Signs_are_new_or_no_longer_noted()
    {
        ChangeList changes = Of("""
            2026-09-01 check
              ear L odour
              tooth 208 tartar
            2026-10-01 visit
              tooth 208 tartar
              eye both clear
            2026-11-01 check
              ear L clean
              ear R red
              tooth 208 tartar
              eye both clear
              coat glossy
            2026-11-10 check
              ear R red
            """);
        Assert.Equal(
            [("ear R", "red", true), ("ear L", "odour", false)],
            changes.Signs.Select(sign => ($"{sign.Key.Word} {sign.Key.Detail}", sign.Word.Word, sign.IsNew)));
        Assert.Equal((new DateOnly(2026, 11, 1), new DateOnly(2026, 11, 10)), (changes.Signs[0].First.Day, changes.Signs[0].Last.Day));
    }

    [Fact]
    public void A_sign_that_went_away_and_came_back_is_not_new_within_a_year()
    {
        const string Entries = "{0} check\n  ear L odour\n2026-10-01 visit\n  ear L clean\n2026-11-01 check\n  ear L odour\n";
        Assert.Empty(Of(Entries.Replace("{0}", "2026-01-01", StringComparison.Ordinal)).Signs);
        Assert.True(Of(Entries.Replace("{0}", "2025-01-01", StringComparison.Ordinal)).Signs.Single().IsNew);
    }

    [Fact]
    public void Medicines_begin_change_and_end()
    {
        ChangeList changes = Of("""
            2026-10-01 visit
              med b 1 tablet every 24h for 5d
              med c 2mg every 24h
            2026-11-01 visit by the vet
              med ax 10mg every 12h
            2026-11-10 log
              stop c
            """, new DateOnly(2026, 9, 30));
        Assert.Equal(
            [(1, "b", null), (1, "c", null), (5, null, "b"), (1, "ax", "ax"), (10, null, "c")],
            changes.Medicines.Select(change => (change.On.Day, change.Begun?.Plan.Medicine.Text, change.Ended?.Plan.Medicine.Text)));
        Assert.Equal([new DateOnly(2026, 10, 5)], changes.Medicines.Where(change => change.Ended?.Plan.Medicine.Text == "b").Select(change => change.On));
    }

    [Fact]
    public void What_happened_is_added_up_and_what_is_ordinary_is_not()
    {
        ChangeList changes = Of("2026-10-01 visit\n  vomit 5x\n2026-11-01 log\n  vomit 2x\n  vomit hair-ball 1x\n  stool firm\n2026-11-03 log\n  vomit 1x\n  stool watery 3x\n  missed carprofen\n");
        Assert.Equal(
            [("vomit", 3, 2), ("stool", 3, 1), ("missed", 1, 1)],
            changes.Events.Select(count => (count.Word, count.Times, count.Days)));
        Assert.Equal(new DateOnly(2026, 11, 3), changes.Events[0].Last);
    }

    [Fact]
    public void Nothing_after_the_day_is_nothing_changed()
    {
        Assert.True(Of("2026-10-01 visit\n  hr 18/15s\n  lump L-flank 10mm\n").IsEmpty);
        Assert.True(Of("2026-10-01 visit\n  hr 18/15s\n2027-01-01 check\n  hr 40/15s\n").IsEmpty);
    }

    private static ChangeList Of(string entries, DateOnly? since = null) => ChangeList.Of(PetRecord.Of(Note.Read(Start + entries), Today), since)!;

    private static (DateOnly, SinceWhat) Since(ChangeList changes) => (changes.Since, changes.From);
}
