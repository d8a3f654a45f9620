using HealthNotes.Grammar.Notes;
using HealthNotes.Tests.Grammar.Reference;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Ebnf;

/// <summary>
/// For each alternative of each rule of the EBNF: a line it allows, and a neighbour of that line that is refused.
/// A rule that refuses nothing of its own is listed as such.
/// </summary>
public class NeighbourTests
{
    /// <summary>Rules that only join others, or that allow any characters: there is no neighbour to refuse.</summary>
    private static readonly string[] RefuseNothing =
        ["note", "opening-item", "other-line", "end", "item", "lasting-fact", "limit", "vital", "rate", "exam", "finding", "care", "act", "task", "site", "size", "looked", "graded", "remark",
         "COMMENT", "FREE-TEXT", "BLANK", "NEWLINE", "DIGIT", "FIRST-DIGIT", "WHOLE", "JOIN", "X"];

    /// <summary>Rule, number of the alternative, a line it allows, a neighbour that is refused.</summary>
    public static TheoryData<string, int, string, string> Rows { get; } = new()
    {
        { "opening", 0, "pet Marlow\nspecies dog", "pet Marlow\ngums pink" },
        { "entry", 0, "2026-10-04 check\ngums pink", "2026-10-04 check\nusual rr 16-24" },
        { "entry", 1, "2026-10-04 visit\nusual rr 16-24", "2026-10-04 visit\nborn 2017" },
        { "day", 0, "2026-10-04 08:15 check", "2026-10-04 08:15 chek" },
        { "visit", 0, "2026-10-04 visit by vet", "2026-10-04 visti by vet" },
        { "by", 0, "2026-10-04 by vet", "2026-10-04 by" },

        { "pet", 0, "pet Marlow", "pet" },
        { "species", 0, "species dog", "species horse" },
        { "breed", 0, "breed lurcher type", "breed" },
        { "sex", 0, "sex male neutered", "sex male female" },
        { "sex", 1, "sex entire", "sex entire neutered" },
        { "born", 0, "born 2017-03", "born 03-2017" },
        { "adult-weight", 0, "adult-weight 27kg", "adult-weight 27" },
        { "vet", 0, "vet the vet", "vet" },
        { "clinic", 0, "clinic by the river", "clinic" },
        { "owner", 0, "owner her family", "owner" },
        { "chip", 0, "chip 000", "chip" },
        { "phone", 0, "phone 000", "phone" },
        { "units", 0, "units us", "units uk" },
        { "known", 0, "known heart murmur", "known" },
        { "allergy", 0, "allergy chicken", "allergy" },
        { "surgery", 0, "surgery spleen removed", "surgery" },
        { "med", 0, "med prednisone 5mg daily for 5d then 2.5mg daily", "med 5mg daily for 5d then 2.5mg daily" },
        { "med", 1, "med benazepril 5mg every 12h", "med benazepril 5mg every 12" },
        { "home-check", 0, "home-check every 30d", "home-check in 30d" },
        { "expect", 0, "expect wound swollen until 2026-10-09 per vet", "expect wound swollen" },
        { "accept", 0, "accept lump-sample lump L-flank until 2027-03-01 sampled", "accept lump-sample lump L-flank 2027-03-01" },
        { "usual", 0, "usual rr 16-24", "usual gums 16-24" },
        { "usual-range", 0, "usual hr 60-80 asleep", "usual hr 60-80kg asleep" },
        { "usual-range", 1, "usual bcs 4-5", "usual bcs 5-4" },
        { "usual-range", 2, "usual temp 38-39C", "usual temp 38-39" },
        { "usual-range", 3, "usual weight 26-28kg", "usual weight 26-28" },
        { "usual-range", 4, "usual glucose 5-9mmol/L", "usual glucose 5-9kg" },
        { "call-if", 0, "call-if rr >32", "call-if rr 32" },
        { "phone-now-if", 0, "phone-now-if rr >50", "phone-now-if rr 50" },
        { "med-range", 0, "med-range benazepril 1-2mg/kg", "med-range benazepril 1-2" },
        { "med-strength", 0, "med-strength benazepril 5mg", "med-strength benazepril 5" },
        { "crossed", 0, "call-if hr asleep >120", "call-if hr asleep 120" },
        { "crossed", 1, "call-if crt >2", "call-if crt >2kg" },
        { "crossed", 2, "call-if temp >39.5C", "call-if temp >39.5kg" },
        { "crossed", 3, "call-if weight <4kg", "call-if weight <4" },
        { "crossed", 4, "call-if glucose <4mmol/L", "call-if glucose <4kg" },
        { "per", 0, "usual rr 16-24 per vet", "usual rr 16-24 per" },

        { "hr", 0, "hr 72 thigh", "hr 72 thihg" },
        { "rr", 0, "rr 20 asleep", "rr 20 chest" },
        { "temp", 0, "temp 38.6C ear", "temp 38.6C thigh" },
        { "weight", 0, "weight 21.4kg", "weight 21.4kg asleep" },
        { "crt", 0, "crt 1s", "crt slow" },
        { "glucose", 0, "glucose 8mmol/L fasting", "glucose 8mmol/L asleep" },
        { "bcs", 0, "bcs 5/9", "bcs normal" },
        { "mcs", 0, "mcs mild", "mcs mild moderate" },
        { "pain", 0, "pain 2/10 L-knee", "pain L-knee" },

        { "bp", 0, "bp 150/90", "bp 150/90kg" },
        { "girth", 0, "girth 48cm", "girth 48" },
        { "grade", 0, "lameness 2/5 LH", "lameness 2 LH" },

        { "led", 0, "limping", "limpign" },
        { "led", 1, "no cough", "no coguh" },
        { "led", 2, "carprofen 75mg", "carprofen 75" },
        { "led", 3, "left ear swollen", "left eer swollen" },
        { "several", 0, "temp 38.6C, hr 72, rr 20", "temp 38.6C, hr 72kg, rr 20" },
        { "several", 1, "weight 21.4kg, ate half, vomit none", "weight 21.4, ate half, vomit none" },

        { "exam-whole", 0, "stance square", "stance" },
        { "hydration", 0, "hydration 5%", "hydration 5kg" },
        { "gait", 0, "gait LF lame", "gait LF" },
        { "exam-sited", 0, "ear L wax", "ear L" },
        { "exam-sized", 0, "skin L-flank 12mm", "skin L-flank" },
        { "tooth", 0, "tooth 208 tartar", "tooth 28 tartar" },
        { "node", 0, "node L-jaw small", "node L-ear small" },
        { "joint", 0, "joint L-knee stiff", "joint L-ear stiff" },
        { "muscle", 0, "muscle L-thigh thin", "muscle L-ear thin" },
        { "gland", 0, "gland R3 soft", "gland L-ear soft" },
        { "seen", 0, "gums pink", "gums pnik" },
        { "seen", 1, "gums ok", "gums okey" },
        { "since", 0, "gums pale since 2026-10-20", "gums pale since 2026-02-30" },
        { "lump", 0, "lump L-flank @a 12mm soft", "lump @a 12mm soft" },
        { "wound", 0, "wound L-flank clean", "wound LF-flank clean" },
        { "pain-site", 0, "pain-site L-flank flinches", "pain-site L-flank 12mm" },
        { "like", 0, "lump L-flank like pea", "lump L-flank like ?" },

        { "gave", 0, "gave benazepril took it well", "gave 5mg" },
        { "gave", 1, "gave fish oil 5ml", "gave fish oil 5" },
        { "gave", 2, "gave cephalexin 500mg 08:00 20:00", "gave cephalexin 500mg 08:00 25:00" },
        { "missed", 0, "missed benazepril 5mg", "missed" },
        { "stop", 0, "stop benazepril", "stop" },
        { "ate", 0, "ate 3/4 slow", "ate 3/0 slow" },
        { "portion", 0, "ate 50%", "ate 1,200%" },
        { "ate", 1, "ate none", "ate 4/0" },
        { "ate", 2, "ate slow", "ate slwo" },
        { "portion", 1, "ate all", "ate 3/0" },
        { "portion", 2, "ate most", "ate most 3/4" },
        { "portion", 3, "ate half", "ate half 50%" },
        { "portion", 4, "ate a little", "ate a littel" },
        { "food", 0, "food lamb 60g", "food lamb 60" },
        { "food", 1, "food 60g", "food 60" },
        { "water", 0, "water 900ml", "water 900kg" },
        { "pee", 0, "pee 50ml 2x", "pee 50mm 2x" },
        { "stool", 0, "stool soft 2x", "stool sfot 2x" },
        { "events", 0, "vomit none", "vomit foma" },
        { "lasting-events", 0, "cough dry 3x", "cough dry 3C" },
        { "walk", 0, "walk 2km", "walk 2kg" },
        { "mood", 0, "mood quiet", "mood" },
        { "kept", 0, "rest crate 2h", "rest crate 2kg" },
        { "stitches", 0, "stitches 13/14 clean", "stitches 14/13 clean" },
        { "lab", 0, "lab creatinine 110umol/L ref 44-159", "lab creatinine" },

        { "vaccine", 0, "vaccine rabies for 3y 2026-04-15", "vaccine rabies for 3kg" },
        { "treatment", 0, "flea-tick every 12w 2026-08-01", "flea-tick every 12kg" },
        { "holds", 0, "worming every 3mo 2026-09-01", "worming every 3mo 2026-02-30" },

        { "ask", 0, "ask why?", "ask" },
        { "done", 0, "done nails", "done" },
        { "recheck", 0, "recheck ear in 2w", "recheck ear" },
        { "due", 0, "due booster 2027-01", "due 2027-01" },
        { "due-when", 0, "due booster in 1y", "due booster in" },
        { "pointed", 0, "recheck weight in 2w", "recheck weight L in 2w" },
        { "pointed", 1, "recheck ear L in 2w", "recheck ear LF-flank in 2w" },
        { "pointed", 2, "recheck lump L-flank @a in 2w", "recheck lump L-flank @a @b in 2w" },
        { "pointed", 3, "recheck tooth 208 in 2w", "recheck tooth 28 in 2w" },
        { "pointed", 4, "recheck node L-jaw in 2w", "recheck node L-ear in 2w" },
        { "pointed", 5, "recheck joint L-knee in 2w", "recheck joint L-ear in 2w" },
        { "pointed", 6, "recheck muscle L-thigh in 2w", "recheck muscle L-ear in 2w" },
        { "pointed", 7, "recheck gland R3 in 2w", "recheck gland R7 in 2w" },
        { "photo", 0, "photo left-ear.jpg", "photo" },
        { "skip", 0, "skip anus left him in peace", "skip anvil left him in peace" },
        { "else-ok", 0, "else ok", "else pink" },
        { "every", 0, "med x every 12h", "med x every" },
        { "every", 1, "med x q12h", "med x q12mm" },
        { "every", 2, "flea-tick BID", "flea-tick every every" },

        { "SITE", 0, "lump L-flank", "lump LF-flank" },
        { "SITE", 1, "lump nape", "lump L-nape" },
        { "SITE", 2, "lump mid-chest", "lump LH-chest" },
        { "SITE", 3, "lump LH-toe", "lump mid-toe" },
        { "SITE", 4, "lump LF-elbow", "lump LH-elbow" },
        { "SITE", 5, "lump LH-knee", "lump LF-knee" },
        { "NODE-SITE", 0, "node L-jaw small", "node mid-jaw small" },
        { "NODE-SITE", 1, "node LH-knee-back small", "node LF-knee-back small" },
        { "JOINT-SITE", 0, "joint spine stiff", "joint L-spine stiff" },
        { "JOINT-SITE", 1, "joint LF-toe stiff", "joint mid-toe stiff" },
        { "JOINT-SITE", 2, "joint RF-wrist stiff", "joint RH-wrist stiff" },
        { "JOINT-SITE", 3, "joint RH-hip stiff", "joint RF-hip stiff" },
        { "MUSCLE-SITE", 0, "muscle L-temple thin", "muscle mid-temple thin" },
        { "MUSCLE-SITE", 1, "muscle mid-rump thin", "muscle LH-rump thin" },
        { "MUSCLE-SITE", 2, "muscle LH-thigh thin", "muscle LF-thigh thin" },
        { "GLAND-SITE", 0, "gland L-gland4 soft", "gland mid-gland4 soft" },
        { "GLAND-SITE", 1, "gland L4 soft", "gland L9 soft" },
        { "SIDE", 0, "ear L ok", "ear K ok" },
        { "SIDE", 1, "ear R ok", "ear Q ok" },
        { "SIDE", 2, "paw LF ok", "paw LG ok" },
        { "SIDE", 3, "paw RF ok", "paw RG ok" },
        { "SIDE", 4, "paw LH ok", "paw LK ok" },
        { "SIDE", 5, "paw RH ok", "paw RK ok" },
        { "SIDE", 6, "ear both ok", "ear bothh ok" },
        { "SIDE", 7, "nose mid ok", "nose midd ok" },
        { "TAG", 0, "lump L-flank @a", "lump L-flank @" },

        { "COUNT", 0, "hr 18/15s", "hr 18/15" },
        { "RATE", 0, "hr 72/min", "hr 72/max" },
        { "TEMPERATURE", 0, "temp 38.6C", "temp 38.6K" },
        { "MASS", 0, "weight 21.4kg", "weight 21.4mg" },
        { "POUNDS-OUNCES", 0, "weight 47lb 3oz", "weight 47oz 3lb" },
        { "DIFFERENCE", 0, "weight 83.2-55.9kg", "weight 55.9-83.2kg" },
        { "SECONDS", 0, "crt 1.5s", "crt 1.5h" },
        { "GLUCOSE", 0, "glucose 148mg/dL", "glucose 148mg" },
        { "SCORE", 0, "bcs 5/9", "bcs 5" },
        { "SIZE", 0, "lump L-flank 12x9mm", "lump L-flank 12x9" },
        { "PORTION", 0, "ate 3/4", "ate 3/0" },
        { "PORTION", 1, "ate 50%", "ate 1,200%" },
        { "AMOUNT", 0, "gave x 5mg", "gave x 5" },
        { "AMOUNT", 1, "gave x 1/2 tablet", "gave x 1/2" },
        { "AMOUNT", 2, "gave x 1 1/2 tablets", "gave x 1 1/2" },
        { "VOLUME", 0, "water 900ml", "water 900" },
        { "PERCENT", 0, "hydration 5%", "hydration 5,000%" },
        { "PRESSURE", 0, "bp 150/90 mmHg", "bp 150/90C" },
        { "GIRTH", 0, "girth 48cm", "girth 48km" },
        { "GRAMS", 0, "ate 60g", "ate 60" },
        { "CLUMPS", 0, "pee 3 clumps", "pee 3 clmups" },
        { "MARKED", 0, "water 2x", "water 2.5x" },
        { "COUNTED", 0, "stitches 13/14", "stitches 14/13" },
        { "LAB-VALUE", 0, "lab ALT 88U/L", "lab ALT" },
        { "TIMES", 0, "stool 2x", "stool 2.5x" },
        { "TIMES", 1, "stool x2", "stool x2000" },
        { "DURATION", 0, "seizure 90s", "walk 90" },
        { "DURATION", 1, "walk 2min 30s", "walk 2min 30min" },
        { "DISTANCE", 0, "walk 2km", "walk 2mm" },
        { "SPAN", 0, "recheck ear in 2w", "recheck ear in 2kg" },
        { "Q-INTERVAL", 0, "med x q2d", "med x q0d" },
        { "RANGE", 0, "usual rr 16-24", "usual rr 24-16" },
        { "RANGE-C", 0, "usual temp 38-39C", "usual temp 38-39kg" },
        { "RANGE-DOSE", 0, "med-range benazepril 1-2mg", "med-range benazepril 2-1mg" },
        { "include", 0, "include cardiac", "include" },
        { "RANGE-KG", 0, "usual weight 26-28kg", "usual weight 26-28C" },
        { "RANGE-GLUCOSE", 0, "usual glucose 5-9mmol/L", "usual glucose 5-9" },
        { "LINE", 0, "call-if rr >32", "call-if rr ~32" },
        { "LINE-C", 0, "call-if temp <37C", "call-if temp 37C" },
        { "LINE-KG", 0, "call-if weight <4kg", "call-if weight 4kg" },
        { "LINE-GLUCOSE", 0, "call-if glucose <4mmol/L", "call-if glucose 4mmol/L" },
        { "BOUND", 0, "hr ~72", "hr ^72" },
        { "NUMBER", 0, "weight 1200.5g", "weight 1,200g" },

        { "WHEN", 0, "born ~2017", "born <2017" },
        { "DATE", 0, "recheck ear 2026-02-28", "recheck ear 2026-02-30" },
        { "YEAR", 0, "born 1999", "born 1899" },
        { "MONTH", 0, "born 2017-12", "born 2017-13" },
        { "TIME", 0, "18:05 pee", "18:65 pee" },
        { "TIME", 1, "6:05pm pee", "16:05pm pee" },
        { "BARE-TIME", 0, "1805 pee", "1865 pee" },
        { "HOUR", 0, "19:00 pee", "29:00 pee" },
        { "HOUR", 1, "23:00 pee", "24:00 pee" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Allowed_and_refused(string rule, int alternative, string allowed, string refused)
    {
        Assert.True(Problems(allowed).Length == 0, $"{rule}/{alternative}: {allowed}: {Problems(allowed)}");
        Assert.True(Problems(refused).Length > 0, $"{rule}/{alternative}: {refused} is not refused");
    }

    [Fact]
    public void Every_alternative_of_every_rule_has_a_row()
    {
        EbnfGrammar grammar = EbnfReader.Read(Assert.Single(LanguagePage.Blocks("ebnf")).Text);
        string[] all = [.. grammar.Rules.Keys.Except(RefuseNothing).SelectMany(rule => grammar.Alternatives(rule).Select((_, index) => $"{rule}/{index}"))];
        string[] rows = [.. Rows.Select(row => $"{row[0]}/{row[1]}")];
        None.Wrong(all.Except(rows).Select(alternative => $"no row for {alternative}"));
        None.Wrong(rows.Except(all).Select(row => $"{row} is in no rule"));
    }

    /// <summary>A line that is neither head nor fact is read inside an entry.</summary>
    private static string Problems(string text)
    {
        bool facts = HealthNotes.Grammar.Parsing.NoteSyntax.Parse(text).Lines[0] is { Kind: HealthNotes.Grammar.Syntax.LineKind.EntryHead }
            or { Item.Word.Kind: HealthNotes.Grammar.Vocabulary.WordKind.Fact };
        return string.Join("; ", Note.Read(facts ? text : "2026-10-04\n" + text).Problems.Select(p => p.Problem.Message));
    }
}
