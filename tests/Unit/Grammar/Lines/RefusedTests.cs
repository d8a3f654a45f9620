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
                ^^^^^^ unknown-word: expected dog or cat
        sex mael
            ^^^^ unknown-word: did you mean `male`?
        born 12/03/2017
             ^^^^^^^^^^ bad-date: year-month-day
        born 2017-13
             ^^^^^^^ bad-date: not in the calendar
        units metrc
              ^^^^^ unknown-word: did you mean `metric`?
        usual weigt 20-22kg
              ^^^^^ unknown-word: did you mean `weight`?
        usual rr 24-16
                 ^^^^^ bad-number: the lower number comes first
        usual temp 38-39
                   ^^^^^ missing-unit: temp is given as
        usual rr 18
                 ^^ wrong-value: a range such as 16-24
        usual rr 16-24 per
                       ^^^ missing: per vet 2026-01-20
        call-if rr 32
                   ^^ wrong-value: >32
        call-if temp >39
                     ^^^ missing-unit: temp is given as
        home-check
        ^^^^^^^^^^ missing: how often, such as every 30d
        adult-weight 27
                     ^^ missing-unit: kg
        """);

    [Fact]
    public void Medicines() => Marked.CheckLines("""
        med
        ^^^ missing: the medicine's name
        med benazepril 5
                       ^ missing-unit: mg
        med benazepril 5mgg every 12h
                        ^^^ wrong-unit: did you mean `mg`?
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
        med benazepril from tomorrow
                       ^^^^ missing: from 2026-10-20
                            ^^^^^^^^ unknown-word
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
                         ^^^ wrong-unit: did you mean `mg`?
        gave benazepril 3pm
        gave benazepril 5mg (in cheese)
        """);

    [Fact]
    public void Vitals() => Marked.CheckLines("""
        hr
        ^^ missing: a count such as 18/15s
        hr fast
        ^^ missing: a count such as 18/15s
        hr 18/15
           ^^^^^ missing-unit: over how long?
        hr 18/0s
           ^^^^^ bad-number: divided by 0
        hr 18/15kg
           ^^^^^^^ wrong-value: a count such as 18/15s
        temp 38.6
             ^^^^ missing-unit: C, F
        temp 38.6kg
                 ^^ wrong-unit: does not go with temp
        temp 38.6Q
                 ^ wrong-unit: not a unit known here
        crt 2min
             ^^^ wrong-unit: does not go with crt
        weight 21.4
               ^^^^ missing-unit: kg
        weight 1,200kg
               ^^^^^^^ bad-number: 1200 or 1.2
        weight 55.9-83.2kg
               ^^^^^^^^^^^ bad-number: the first number must be the larger
        weight 83.2-55.9
               ^^^^^^^^^ missing-unit: write kg or lb
        weight 83.2kg-55.9cm
                          ^^ wrong-unit: `cm` does not go with weight
        bcs 5
            ^ missing-unit: on which scale?
        bcs 5/0
            ^^^ bad-number: divided by 0
        mcs thin
            ^^^^ unknown-word: normal, mild, moderate or severe
        glucose 8.2
                ^^^ missing-unit: mmol/L
        rr 12/15s aslep
                  ^^^^^ unknown-word: did you mean `asleep`?
        temp 38.6C armpt
                   ^^^^^ unknown-word: did you mean `armpit`?
        hr 12.5.3
           ^^^^^^ unreadable: after `12.5`
        hr 1234567890
           ^^^^^^^^^^ bad-number: too long
        """);

    [Fact]
    public void Examination_and_body_scan() => Marked.CheckLines("""
        ear
        ^^^ missing: ok, or a word for what you saw
        gums pimk
             ^^^^ unknown-word: did you mean `pink`?
        gums rosy-ish
             ^^^^^^^^ unknown-word
        skin L-flnak bald
               ^^^^^ unknown-word: did you mean `flank`?
        skin L-nape bald
             ^^^^^^ impossible-site: midline
        joint LF-knee stiff
              ^^^^^^^ impossible-site: expected L, R or both (or LH, RH)
        joint RH-elbow stiff
              ^^^^^^^^ impossible-site: expected L, R or both (or LF, RF)
        paw mid-toe cut
            ^^^^^^^ impossible-site: expected LF, RF, LH or RH
        skin LF-flank bald
             ^^^^^^^^ impossible-site: expected L, R or both
        skin LF-head bald
             ^^^^^^^ impossible-site: expected L, R, mid or both
        node L-knee small
             ^^^^^^ impossible-site: is not known as a node
        joint L-thigh stiff
              ^^^^^^^ impossible-site: is not known as a joint
        muscle L-toe thin
               ^^^^^ impossible-site: is not known as a muscle
        gland R-gland6 soft
              ^^^^^^^^ impossible-site: numbered 1 to 5
        tooth 999 tartar
              ^^^ impossible-site: three figures
        ear L R wax
              ^ said-twice: `L`
        lump 12mm
        ^^^^ missing: a place, such as L-flank
        lump L-flank @ soft
                     ^ missing: a tag needs a name
        lump L-flank @a @b
                        ^^ said-twice: `@a`
        lump L-flank 12
                     ^^ missing-unit: mm, cm, in
        lump L-flank 12x9
                     ^^^^ missing-unit: write mm, cm or in
        lump L-flank 12x9kg
                         ^^ wrong-unit: does not go with lump
        lump L-flank 12x0mm
                     ^^^^^^ bad-number
        lump L-flank 12km
                       ^^ wrong-unit: does not go with lump
        lump L-flank like
                     ^^^^ missing: like pea
        lump L-flank like pee
                          ^^^ unknown-word: did you mean `pea`?
        lump L-flank 12mm 9mm
                          ^^^ said-twice: `12mm`
        """);

    [Fact]
    public void Home_care_tasks_and_the_rest() => Marked.CheckLines("""
        ate 3/0
            ^^^ bad-number: divided by 0
        water 900
              ^^^ missing-unit: ml
        water 900kg
                 ^^ wrong-unit: does not go with water
        stool 2.5x
              ^^^^ bad-number: whole number of times
        stool 5000x
              ^^^^^ bad-number: whole number of times
        stool soft 2x 3x
                      ^^ said-twice: `2x`
        walk 30
             ^^ missing-unit: min
        walk 30kg
               ^^ wrong-unit: does not go with walk
        mood
        ^^^^ missing: ok, or a word for what you saw
        food 60
             ^^ missing-unit: g
        ask
        ^^^ missing: words after ask
        recheck ear
        ^^^^^^^ missing: when, such as in 2w
        recheck eer in 2w
                ^^^ unknown-word: did you mean `ear`?
        due booster
        ^^^ missing: when, such as in 2w
        due in 2w
        ^^^ missing: what falls due
        photo
        ^^^^^ missing: a file name
        skip
        ^^^^ missing: what it is about, such as ear
        skip ear-ring
             ^^^^^^^^ unknown-word
        else
        ^^^^ missing: ok
        else fien
             ^^^^ unknown-word: did you mean `fine`?
        """);

    [Fact]
    public void Heads_of_entries() => Marked.CheckLines("""
        2026-02-30 check
        ^^^^^^^^^^ bad-date: there is no such day
        04/10/2026 check
        ^^^^^^^^^^ bad-date: so 2026-04-10 or 2026-10-04
        2026/10/04
        ^^^^^^^^^^ bad-date: so 2026-10-04
        2026-10-04 25:00 check
                   ^^^^^ bad-time: not a time of day
        2026-10-04 chek
                   ^^^^ unknown-word: did you mean `check`?
        2026-10-04 08:15 check with Ann
                               ^^^^ unknown-word: expected a time, check, log or visit, or by WHO
        """);

    [Fact]
    public void Lines_that_start_with_no_known_word() => Marked.CheckLines("""
        gmus pink
        ^^^^ unknown-line: did you mean `gums`?
        He seems well today.
        ^^ unknown-line: start it with a word such as hr, ear or lump, or with > for free text
        72 hr
        ^^ unknown-line: a line starts with a date (2026-10-04), a time (07:30) or a word
        07:30
        ^^^^^ unknown-line
        07:30 gmus pink
              ^^^^ unknown-line: did you mean `gums`?
        25:70 gums pink
        ^^^^^ bad-time: not a time of day
        - gums pink
        ^ unknown-line
        """);
}
