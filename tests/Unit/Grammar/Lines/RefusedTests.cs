using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>What is refused, where exactly, and what is offered instead. A slot kind each, then the forms of value.</summary>
public class RefusedTests
{
    [Fact]
    public void Facts() => Marked.CheckLines("""
        pet
        ^^^ missing: a name, such as pet Marlow
        species rabbit
                ^^^^^^ unknown-word: Write dog or cat
        sex mael
            ^^^^ unknown-word: Did you mean `male`?
        born 12/03/2017
             ^^^^^^^^^^ bad-date: year-month-day
        born 2017-13
             ^^^^^^^ bad-date: not in the calendar
        units metrc
              ^^^^^ unknown-word: Did you mean `metric`?
        usual weigt 20-22kg
              ^^^^^ unknown-word: Did you mean `weigh`?
        usual rr 24-16
                 ^^^^^ bad-number: the lower number comes first.
        usual temp 38-39
                   ^^^^^ missing-unit: temp is a temperature such as 38.6C
        usual rr 18
                 ^^ wrong-value: a range such as 16-24
        usual rr 16-24 per
                       ^^^ missing: per vet 2026-01-20
        call-if rr 32
                   ^^ wrong-value: >32
        call-if temp >50
                     ^^^ missing-unit: temp is a temperature such as 38.6C
        home-check
        ^^^^^^^^^^ missing: how often, such as every 30d
        adult-weight 27
                     ^^ missing-unit: 27kg, 27lb
        """);

    [Fact]
    public void Medicines() => Marked.CheckLines("""
        med
        ^^^ missing: the medicine's name
        med benazepril 5
                       ^ missing-unit: 5mg, 5ml
        med benazepril 5mgg every 12h
                        ^^^ wrong-unit: Did you mean `mg`?
        med benazepril 38C
                         ^ wrong-unit: `C` does not go with med
        med benazepril every
                       ^^^^^ missing: every 12h
        med benazepril every 12
                             ^^ missing-unit: unit of time
        med benazepril every 12kg
                               ^^ wrong-unit: unit of time
        med benazepril q12x
                          ^ wrong-unit: q12h
        med benazepril until 2026-02-30
                             ^^^^^^^^^^ bad-date: not in the calendar
        med benazepril 04/10/2026
                       ^^^^^^^^^^ bad-date: two ways
        med benazepril at 25:00
                          ^^^^^ bad-time: not a time of day
        gave prednisone 1/2
                        ^^^ missing-unit: 1/2 tablet
        gave
        ^^^^ missing: the medicine's name
        gave benazepril 5mgg
                         ^^^ wrong-unit: Did you mean `mg`?
        gave benazepril 3pm
        gave benazepril 5mg (in cheese)
        gave water 100ml
             ^^^^^ unknown-word: does not look like a medicine
        gave gabapentin 300mg with food 50 mg too much
                                        ^^^^^ said-twice: `300mg`
        """);

    [Fact]
    public void Vitals() => Marked.CheckLines("""
        hr
        ^^ missing: a count such as 18/15s
        hr fast
        ^^ missing: a count such as 18/15s
        hr 18/15
           ^^^^^ missing-unit: over how many seconds? Write 18/15s.
        hr 18/0s
           ^^^^^ bad-number: divided by 0
        hr 18/15kg
           ^^^^^^^ wrong-unit: seconds or a minute
        temp 30
             ^^ missing-unit: 30C, 30F
        temp 38.6kg
                 ^^ wrong-unit: does not go with temp
        temp 38.6Q
                 ^ wrong-unit: not a unit I know here
        crt 2min
             ^^^ wrong-unit: does not go with crt
        weight 21.4
               ^^^^ missing-unit: 21.4kg, 21.4lb
        weight 1,200kg
               ^^^^^^^ bad-number: 1200 or 1.2
        weight 55.9-83.2kg
               ^^^^^^^^^^^ bad-number: the first number must be the larger
        weight 83.2-55.9
               ^^^^^^^^^ missing-unit: 83.2-55.9kg
        weight 83.2kg-55.9cm
                          ^^ wrong-unit: `cm` does not go with weight
        bcs 5
            ^ missing-unit: needs a scale here: 5/9, 5/5
        bcs 5/0
            ^^^ bad-number: divided by 0
        mcs thin
        ^^^ missing: normal, mild, moderate or severe
        glucose 33
                ^^ missing-unit: 33mmol/L, 33mg/dL
        rr 12/15s aslep
                  ^^^^^ unknown-word: Did you mean `asleep`?
        temp 38.6C armpt
                   ^^^^^ unknown-word: Did you mean `armpit`?
        hr 12.5.3
           ^^^^^^ unreadable: behind `12.5`
        hr 1234567890
           ^^^^^^^^^^ bad-number: too long
        """);

    [Fact]
    public void Examination_and_body_scan() => Marked.CheckLines("""
        ear
        ^^^ missing: ok, or a word for what you saw
        gums pimk
             ^^^^ unknown-word: Did you mean `pink`?
        gums rosy-ish
             ^^^^^^^^ unknown-word: Words I know here: ok,
        skin L-flnak bald
               ^^^^^ unknown-word: Did you mean `flank`?
        skin L-nape bald
             ^^^^^^ impossible-site: midline
        joint LF-knee stiff
              ^^^^^^^ impossible-site: Write L, R or both (or LH, RH)
        joint RH-elbow stiff
              ^^^^^^^^ impossible-site: Write L, R or both (or LF, RF)
        paw mid-toe cut
            ^^^^^^^ impossible-site: Write LF, RF, LH or RH
        skin LF-flank bald
             ^^^^^^^^ impossible-site: Write L, R or both
        skin LF-head bald
             ^^^^^^^ impossible-site: Write L, R, mid or both
        node L-knee small
             ^^^^^^ impossible-site: is not a node
        joint L-thigh stiff
              ^^^^^^^ impossible-site: is not a joint
        muscle L-toe thin
               ^^^^^ impossible-site: is not a muscle
        gland R-gland6 soft
              ^^^^^^^^ impossible-site: numbered 1 to 5
        tooth 999 tartar
              ^^^ impossible-site: three figures
        lump 12mm
        ^^^^ missing: a place, such as L-flank
        lump L-flank @ soft
                     ^ missing: A tag needs a name
        lump L-flank @a @b
                        ^^ said-twice: `@a`
        lump L-flank 12
                     ^^ missing-unit: 12mm
        lump L-flank 12x9
                     ^^^^ missing-unit: 12x9mm
        lump L-flank 12x9kg
                         ^^ wrong-unit: does not go with lump
        lump L-flank 12x0mm
                     ^^^^^^ bad-number
        lump L-flank 12km
                       ^^ wrong-unit: does not go with lump
        lump L-flank like
                     ^^^^ missing: like pea
        lump L-flank like pee
                          ^^^ unknown-word: Did you mean `pea`?
        lump L-flank 12mm 9mm
                          ^^^ said-twice: `12mm`
        """);

    [Fact]
    public void Home_care_tasks_and_the_rest() => Marked.CheckLines("""
        ate 3/0
            ^^^ bad-number: divided by 0
        water 900
              ^^^ missing-unit: 900ml
        water 900kg
                 ^^ wrong-unit: does not go with water
        stool 2.5x
              ^^^^ bad-number: whole number of times
        stool 5000x
              ^^^^^ bad-number: whole number of times
        stool soft 2x 3x
                      ^^ said-twice: Write one observation a line
        walk 30
             ^^ missing-unit: 30min
        walk 30kg
               ^^ wrong-unit: does not go with walk
        mood
        ^^^^ missing: ok, or a word for what you saw
        food 60
             ^^ missing-unit: 60g
        ask
        ^^^ missing: words after ask
        recheck ear
        ^^^^^^^ missing: when, such as in 2w
        recheck eer in 2w
                ^^^ unknown-word: such as ear
        due booster
        ^^^ missing: when, such as in 2w
        due in 2w
        ^^^ missing: what falls due
        photo
        ^^^^^ missing: a file name
        skip
        ^^^^ missing: what it is about, such as ear
        skip ear-ring
             ^^^^^^^^ unknown-word: such as ear
        else
        ^^^^ missing: ok
        else fien
             ^^^^ unknown-word: Did you mean `fine`?
        """);

    [Fact]
    public void Heads_of_entries() => Marked.CheckLines("""
        2026-02-30 check
        ^^^^^^^^^^ bad-date: There is no such day
        04/10/2026 check
        ^^^^^^^^^^ bad-date: so 2026-04-10 or 2026-10-04
        2026-10-04 25:00 check
                   ^^^^^ bad-time: not a time of day
        2026-10-04 chek
                   ^^^^ unknown-word: Did you mean `check`?
        2026-10-04 08:15 check with Ann
                                    ^^^ unknown-word: Write a time, check, log or visit, or by and who wrote it
        """);

    [Fact]
    public void Lines_that_start_with_no_known_word() => Marked.CheckLines("""
        gmus pink
        ^^^^ unknown-line: Did you mean `gums`?
        He seems well today.
        ^^ unknown-line: Start with a word such as gums, ear, lump, ate or gave, or with > for free text
        07:30
        ^^^^^ unknown-line: A time needs something behind it
        07:30 gmus pink
              ^^^^ unknown-line: Did you mean `gums`?
        25:70 gums pink
        ^^^^^ bad-time: not a time of day
        """);
}
