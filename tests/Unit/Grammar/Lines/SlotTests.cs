using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>Each kind of slot: one line that is accepted, with the typed value it gives. The refused ones are in <see cref="RefusedTests"/>.</summary>
public class SlotTests
{
    [Fact]
    public void Text() => Assert.Equal("Marlow the dog", Marked.Item<TextFact>("pet Marlow the dog").Text.Text);

    [Fact]
    public void Species_of_the_pet() => Assert.Equal(Species.Cat, Marked.Item<SpeciesFact>("species cat").Species);

    [Theory]
    [InlineData("sex male neutered", true, true)]
    [InlineData("sex female", false, null)]
    [InlineData("sex entire", null, false)]
    [InlineData("sex spayed female", false, true)]
    [InlineData("sex MN", true, true)]
    [InlineData("sex fs", false, true)]
    public void Sex(string line, bool? male, bool? neutered)
    {
        var sex = Marked.Item<SexFact>(line);
        Assert.Equal((male, neutered), (sex.Male, sex.Neutered));
    }

    [Theory]
    [InlineData("born 2017-03-08", "2017-03-08", "2017-03-08")]
    [InlineData("born 2017-3", "2017-03-01", "2017-03-31")]
    [InlineData("born 2020-02", "2020-02-01", "2020-02-29")]
    [InlineData("born ~2017", "2017-01-01", "2017-12-31")]
    public void Birth(string line, string earliest, string latest)
    {
        PartialDate date = Marked.Item<BornFact>(line).Date;
        Assert.Equal((earliest, latest), ($"{date.Earliest:yyyy-MM-dd}", $"{date.Latest:yyyy-MM-dd}"));
        Assert.Equal(line.Contains('~', StringComparison.Ordinal), date.About);
    }

    [Fact]
    public void Units_shown() => Assert.Equal("us", Marked.Item<UnitsFact>("units imperial").Units.Word);

    [Fact]
    public void Vital_range_state_and_per()
    {
        var usual = Marked.Item<UsualFact>("usual rr 16-24 asleep per vet 2026-01-20");
        Assert.Equal("rr", usual.Vital.Word);
        Assert.Equal((16, 24, null), (usual.Range.Low, usual.Range.High, usual.Range.Unit));
        Assert.Equal("asleep", usual.State!.Word);
        Assert.Equal(("vet", "2026-01-20"), (usual.Per!.Who, usual.Per.When!.ToString()));
    }

    [Theory]
    [InlineData("call-if rr asleep >32 per vet", Bound.Above, 32, null)]
    [InlineData("call-if temp < 37.2 C", Bound.Below, 37.2, "C")]
    [InlineData("call-if weight <4kg", Bound.Below, 4, "kg")]
    [InlineData("call-if crt >2", Bound.Above, 2, null)]
    [InlineData("call-if bcs >6", Bound.Above, 6, null)]
    public void Limit(string line, Bound bound, double number, string? unit)
    {
        Limit limit = Marked.Item<CallIfFact>(line).Limit;
        Assert.Equal((bound, (decimal)number, unit), (limit.Bound, limit.Number, limit.Unit?.Word));
    }

    [Fact]
    public void Medicine_amount_route_and_schedule()
    {
        var plan = Marked.Item<MedicinePlan>("med fish oil 5ml PO every 24h from 2026-01-20 until 2026-12 at 08:00 with food");
        Assert.Equal("fish oil", plan.Medicine.Text);
        Assert.Equal((5, "ml"), AmountOf(plan.Dose!));
        Assert.Equal(["oral", "with-food"], plan.Manner.Select(word => word.Word));
        Assert.Equal((24, "h"), (plan.Schedule.Every!.Value.Number, plan.Schedule.Every.Value.Unit.Word));
        Assert.Equal(new DateOnly(2026, 1, 20), plan.Schedule.From!.Exact);
        Assert.Equal(new DateOnly(2026, 12, 31), plan.Schedule.Until!.Latest);
        Assert.Equal(new TimeOnly(8, 0), plan.Schedule.At);
    }

    [Theory]
    [InlineData("med x every 12h", 12, "h")]
    [InlineData("med x q12h", 12, "h")]
    [InlineData("med x Q8H", 8, "h")]
    [InlineData("med x BID", 12, "h")]
    [InlineData("med x tid", 8, "h")]
    [InlineData("med x QID", 6, "h")]
    [InlineData("med x SID", 24, "h")]
    [InlineData("med x EOD", 48, "h")]
    [InlineData("med x every day", 1, "d")]
    [InlineData("med x every 2 weeks", 2, "w")]
    [InlineData("home-check every 1 month", 1, "mo")]
    public void Interval(string line, int number, string unit)
    {
        Schedule schedule = Marked.Item(line) switch { MedicinePlan plan => plan.Schedule, HomeCheckFact fact => fact.Schedule, _ => Schedule.None };
        Assert.Equal((number, unit), (schedule.Every!.Value.Number, schedule.Every.Value.Unit.Word));
    }

    [Theory]
    [InlineData("recheck ear L in 2w", "2026-10-18")]
    [InlineData("recheck ear L in 1 month", "2026-11-04")]
    [InlineData("recheck ear L 2026-11-01", "2026-11-01")]
    [InlineData("recheck ear L on 2026-11-01", "2026-11-01")]
    [InlineData("recheck ear L by 2026-11", "2026-11-30")]
    [InlineData("recheck ear L every 3d", "2026-10-07")]
    public void What_is_due_when(string line, string day) =>
        Assert.Equal(day, $"{Marked.Item<Recheck>(line).Schedule.DayAfter(new DateOnly(2026, 10, 4)):yyyy-MM-dd}");

    [Fact]
    public void Item_site_and_tag()
    {
        var recheck = Marked.Item<Recheck>("recheck lump L-flank @Lower in 2w");
        Assert.Equal(("lump", "L-flank", "lower"), (recheck.Item.Word, recheck.Site!.Name, recheck.Tag!.Name));
    }

    [Fact]
    public void Topic()
    {
        var due = Marked.Item<DueTask>("due yearly check, with teeth on 2027-01-20");
        Assert.Equal("yearly check, with teeth", due.Topic.Text);
        Assert.Equal(new DateOnly(2027, 1, 20), due.Schedule.On!.Exact);
    }

    [Theory]
    [InlineData("hr 18/15s", 18, 15, "s")]
    [InlineData("rr 3 / 6 s", 3, 6, "s")]
    [InlineData("rr 22/1min", 22, 1, "min")]
    public void Count_over_a_time(string line, int count, int time, string unit)
    {
        var value = Assert.IsType<CountOverTime>(Marked.Item<Reading>(line).Value);
        Assert.Equal((count, time, unit), (value.Count, value.Time, value.Unit.Word));
    }

    [Theory]
    [InlineData("hr 72")]
    [InlineData("hr 72/min")]
    [InlineData("hr 72 bpm")]
    [InlineData("hr 72 per-minute")]
    public void Rate(string line) => Assert.Equal(72, Assert.IsType<PerMinute>(Marked.Item<Reading>(line).Value).Number);

    [Theory]
    [InlineData("temp 38.6C", 38.6, "C")]
    [InlineData("temp 101.5 F", 101.5, "F")]
    [InlineData("temp 38,6 °C", 38.6, "C")]
    [InlineData("weight 21.4kg", 21.4, "kg")]
    [InlineData("weight 21,4 KG", 21.4, "kg")]
    [InlineData("weight 4200 grams", 4200, "g")]
    [InlineData("crt 1.5s", 1.5, "s")]
    [InlineData("crt 1", 1, "s")]
    [InlineData("crt 1,5 seconds", 1.5, "s")]
    [InlineData("glucose 8.2mmol/L", 8.2, "mmol/L")]
    [InlineData("glucose 148 mg/dl", 148, "mg/dL")]
    public void Measure(string line, double number, string unit) =>
        Assert.Equal(((decimal)number, unit), AmountOf(Marked.Item<Reading>(line).Value));

    [Fact]
    public void Pounds_and_ounces()
    {
        var measure = Assert.IsType<Measure>(Marked.Item<Reading>("weight 47lb 3 oz").Value);
        Assert.Equal([(47m, "lb"), (3m, "oz")], measure.Amounts.Select(amount => (amount.Number, amount.Unit.Word)));
    }

    [Theory]
    [InlineData("weight 83.2-55.9kg", "kg", "kg")]
    [InlineData("weight 83.2 - 55.9 kg", "kg", "kg")]
    [InlineData("weight 83.2kg-123lb", "kg", "lb")]
    public void Difference(string line, string total, string less)
    {
        var value = Assert.IsType<Difference>(Marked.Item<Reading>(line).Value);
        Assert.Equal((83.2m, total, less), (value.Total.Number, value.Total.Unit.Word, value.Less.Unit.Word));
    }

    [Theory]
    [InlineData("bcs 5/9", 5, 9)]
    [InlineData("bcs 3/5", 3, 5)]
    [InlineData("bcs 4.5/9", 4.5, 9)]
    [InlineData("pain 2/10 L-knee worse", 2, 10)]
    [InlineData("mcs 3/3", 3, 3)]
    [InlineData("mcs normal", 3, 3)]
    [InlineData("mcs mild", 2, 3)]
    [InlineData("mcs moderate", 1, 3)]
    [InlineData("mcs severe", 0, 3)]
    public void Score(string line, double points, double outOf)
    {
        var score = Assert.IsType<Score>(Marked.Item<Reading>(line).Value);
        Assert.Equal(((decimal)points, (decimal)outOf), (score.Points, score.OutOf));
    }

    [Theory]
    [InlineData("rr 20 sleeping", "asleep", null)]
    [InlineData("hr 80 at rest thigh", "rest", "thigh")]
    [InlineData("temp 38.6C rectally", null, "rectal")]
    [InlineData("SRR 20", "asleep", null)]
    [InlineData("glucose 8mmol/L before food", "before-food", null)]
    public void State_and_place(string line, string? state, string? place)
    {
        var reading = Marked.Item<Reading>(line);
        Assert.Equal((state, place), (reading.State?.Word, reading.Place?.Word));
    }

    [Theory]
    [InlineData("skin L-flank bald", "L-flank")]
    [InlineData("skin flank L bald", "L-flank")]
    [InlineData("skin left flank bald", "L-flank")]
    [InlineData("ear L wax", "L")]
    [InlineData("eye both clear", "both")]
    [InlineData("eye OU clear", "both")]
    [InlineData("ear as wax", "L")]
    [InlineData("OD cloudy", "R")]
    [InlineData("paw LF cut", "LF")]
    [InlineData("paw left-front cut", "LF")]
    [InlineData("limb RH-thigh lame", "RH-thigh")]
    [InlineData("node L-jaw small", "L-jaw")]
    [InlineData("node mandibular left small", "L-jaw")]
    [InlineData("joint L-stifle stiff", "L-knee")]
    [InlineData("joint spine stiff", "spine")]
    [InlineData("muscle R-thigh thin", "R-thigh")]
    [InlineData("gland R-gland3 soft", "R-gland3")]
    [InlineData("gland R3 soft", "R-gland3")]
    [InlineData("gland R 3 soft", "R-gland3")]
    [InlineData("gland 3 soft", "gland3")]
    [InlineData("tooth 208 tartar", "208")]
    [InlineData("skin mid-nape bald", "mid-nape")]
    public void Site_node_joint_muscle_gland_tooth(string line, string site) => Assert.Equal(site, Marked.Item<Examined>(line).Site!.Name);

    [Theory]
    [InlineData("lump L-flank 12mm", "12mm")]
    [InlineData("lump L-flank 12x9mm", "12mm 9mm")]
    [InlineData("lump L-flank 12 x 9 x 5 mm", "12mm 9mm 5mm")]
    [InlineData("lump L-flank 12×9mm", "12mm 9mm")]
    [InlineData("lump L-flank 1.2cm x 9mm", "1.2cm 9mm")]
    [InlineData("lump L-flank 0.5in", "0.5in")]
    [InlineData("lump L-flank 0.5\"", "0.5in")]
    [InlineData("lump L-flank 0.5 in soft", "0.5in")]
    public void Size(string line, string lengths)
    {
        var size = Assert.IsType<Diameters>(Marked.Item<Finding>(line).Size);
        Assert.Equal(lengths, string.Join(' ', size.Lengths.Select(length => FormattableString.Invariant($"{length.Number}{length.Unit.Word}"))));
    }

    [Theory]
    [InlineData("lump L-flank like pea", "pea")]
    [InlineData("lump L-flank like a golf ball", "golf-ball")]
    [InlineData("lump L-flank like golf-ball firm", "golf-ball")]
    public void Comparison(string line, string thing) =>
        Assert.Equal(thing, Assert.IsType<LikeObject>(Marked.Item<Finding>(line).Size).Object.Word);

    [Fact]
    public void Tag_tells_two_findings_apart() => Assert.Equal("lower", Marked.Item<Finding>("lump R-gland3 @lower soft").Tag!.Name);

    [Theory]
    [InlineData("gums pink moist", "pink moist")]
    [InlineData("gums moist pink", "moist pink")]
    [InlineData("gums brick red", "brick-red")]
    [InlineData("alert BAR", "bright")]
    [InlineData("ear L odour brown wax", "odour brown wax")]
    [InlineData("ear L odor, brown, waxy", "odour brown wax")]
    public void Words(string line, string words) => Assert.Equal(words, string.Join(' ', Marked.Item<Examined>(line).Words.Select(word => word.Word.Word)));

    [Theory]
    [InlineData("ear L ok")]
    [InlineData("gums fine")]
    [InlineData("belly NAD")]
    public void Ok_after_a_part(string line) => Assert.True(Marked.Item<Examined>(line).Ok);

    [Fact]
    public void Ok_for_the_rest() => Marked.Item<RestOk>("else ok");

    [Theory]
    [InlineData("ate 3/4", 3, 4, Bound.Exact)]
    [InlineData("ate 50%", 50, 100, Bound.Exact)]
    [InlineData("ate all", 1, 1, Bound.Exact)]
    [InlineData("ate nothing", 0, 1, Bound.Exact)]
    [InlineData("ate half", 1, 2, Bound.About)]
    [InlineData("ate a little slowly", 1, 4, Bound.About)]
    [InlineData("ate most", 3, 4, Bound.About)]
    [InlineData("ate <1/4", 1, 4, Bound.Below)]
    public void Portion(string line, int part, int whole, Bound bound)
    {
        var portion = Assert.IsType<Portion>(Marked.Item<CareEvent>(line).Quantity);
        Assert.Equal((part, whole, bound), (portion.Part, portion.Whole, portion.Bound));
    }

    [Fact]
    public void Food_name_amount_and_words()
    {
        var food = Marked.Item<CareEvent>("food dry chicken and rice 60g");
        Assert.Equal("chicken and rice", food.Food!.Text);
        Assert.Equal((60, "g"), AmountOf(food.Quantity!));
        Assert.Equal("dry", Assert.Single(food.Words).Word.Word);
    }

    [Theory]
    [InlineData("water 900ml", 900, "ml")]
    [InlineData("water 1,2 l", 1.2, "l")]
    [InlineData("water 2 cups", 2, "cup")]
    [InlineData("water 10oz", 10, "floz")]
    [InlineData("pee 50ml", 50, "ml")]
    public void Volume(string line, double number, string unit) =>
        Assert.Equal(((decimal)number, unit), AmountOf(Marked.Item<CareEvent>(line).Quantity!));

    [Theory]
    [InlineData("stool soft 2x", 2, Bound.Exact)]
    [InlineData("stool soft 2 x", 2, Bound.Exact)]
    [InlineData("vomit 1", 1, Bound.Exact)]
    [InlineData("vomit x3 bile", 3, Bound.Exact)]
    [InlineData("cough ~5x", 5, Bound.About)]
    [InlineData("sneeze >10x", 10, Bound.Above)]
    public void Times(string line, int times, Bound bound)
    {
        var care = Marked.Item<CareEvent>(line);
        Assert.Equal((times, bound), (care.Times, care.TimesBound));
    }

    [Theory]
    [InlineData("seizure 3min", 3, "min", Bound.Exact)]
    [InlineData("seizure 90 sec", 90, "s", Bound.Exact)]
    [InlineData("seizure 2min 30s", 150, "s", Bound.Exact)]
    [InlineData("walk ~45min", 45, "min", Bound.About)]
    public void Duration(string line, int number, string unit, Bound bound)
    {
        Amount duration = Marked.Item<CareEvent>(line).Duration!.Value;
        Assert.Equal((number, unit, bound), (duration.Number, duration.Unit.Word, duration.Bound));
    }

    [Fact]
    public void Distance() => Assert.Equal("km", Marked.Item<CareEvent>("walk 2km easy").Distance!.Value.Unit.Word);

    [Theory]
    [InlineData("photo left-ear.jpg", "left-ear.jpg", null)]
    [InlineData("photo left ear.jpg inside of the flap", "left ear.jpg", "inside of the flap")]
    public void File(string line, string file, string? caption)
    {
        var photo = Marked.Item<Photo>(line);
        Assert.Equal((file, caption), (photo.File.Text, photo.Caption?.Text));
    }

    [Theory]
    [InlineData("gave benazepril 5mg with food spat half of it out", "spat half of it out")]
    [InlineData("gave prednisone 1 1/2 tablets", null)]
    [InlineData("gave fish-oil took it well", "took it well")]
    [InlineData("missed benazepril 5mg we were away", "we were away")]
    [InlineData("stop benazepril vet said so", "vet said so")]
    public void Note(string line, string? note) => Assert.Equal(note, Marked.Item<DoseEvent>(line).Note?.Text);

    [Fact]
    public void A_mixed_fraction_is_one_amount()
    {
        var dose = Assert.IsType<Measure>(Marked.Item<DoseEvent>("gave prednisone 1 1/2 tablets").Dose);
        Assert.Equal(1.5m, dose.Amounts[0].Value);
    }

    [Fact]
    public void Skipped_with_its_reason()
    {
        var skipped = Marked.Item<Skipped>("skip ear L would not hold still");
        Assert.Equal(("ear", "L", "would not hold still"), (skipped.Item.Word, skipped.Site!.Name, skipped.Reason!.Text));
    }

    [Fact]
    public void Mass_when_grown() => Assert.Equal((27, "kg"), AmountOf(Marked.Item<AdultWeightFact>("adult-weight 27kg").Weight));

    [Theory]
    [InlineData("hr ~72", Bound.About)]
    [InlineData("crt <2s", Bound.Below)]
    [InlineData("rr > 30", Bound.Above)]
    [InlineData("rr ≥30", Bound.Above)]
    [InlineData("weight ≈20kg", Bound.About)]
    public void About_below_above(string line, Bound bound) => Assert.Equal(bound, Marked.Item<Reading>(line).Value.Bound);

    private static (decimal Number, string Unit) AmountOf(NoteValue value)
    {
        Amount amount = Assert.Single(Assert.IsType<Measure>(value).Amounts);
        return (amount.Number, amount.Unit.Word);
    }
}
