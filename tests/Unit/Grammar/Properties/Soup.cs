using System.Collections.Concurrent;
using CsCheck;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>
/// Random text of two kinds: lines put together from the vocabulary's own words, so that the deep paths of the reader are
/// reached, and odd text of the kind that breaks programs.
/// </summary>
public static class Soup
{
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;

    private static readonly string[] Joining =
        ["every", "for", "in", "from", "since", "until", "till", "to", "on", "by", "at", "per", "like", "a", "an", "with", "ok", "else", "and", "x", "@", "@lower", "@a", "l", "r", ">", "#", ":", "-", "/", "'", "(", "2nd"];

    private static readonly string[] OddPieces =
    [
        "\0", "\t", "\u00a0", "\u0085", "\u2028", "\u200b", "\u200f", "\u202e", "\ud83d\udc36", "\ud83d", "\udc36", "e\u0301", "ﬁ", "İ", "ı", "K",
        "狗", "犬の耳", "קשקש", "½", "²", "°", "%", "\"", "≤", "≥", "≈", "–", "×", "µg", "μg", "#", " #", ">", "@", "~", "<", ":", ";", ",", ".", "..", "-", "/", "\\", "\ufeff",
        "99999999999", "0,5", "1,200", "1.2.3", "12x", "x3", "2026-10-04", "2026-02-30", "9999-12-31", "0000-00-00", "04/10/2026", "24:00", "7:30pm", "07:30", "1/0", "~", ">>>>", "`", "*", "|", "<b>",
    ];

    private static readonly Gen<string> Unit = Gen.OneOf([.. Words.Units.Spellings, .. Words.Units.Spellings.Select(unit => " " + unit)]);
    private static readonly Gen<string> Number = Gen.OneOf(
        Gen.Int[0, 130].Select(n => n.ToString()),
        Gen.Int[0, 9999].Select(n => n.ToString()),
        Gen.Select(Gen.Int[0, 50], Gen.Int[0, 999], Gen.OneOf(".", ","), (whole, rest, mark) => $"{whole}{mark}{rest}"),
        Gen.OneOf("0", "00", "1234567890", "5.", ".5"));

    private static readonly Gen<string> Value = Gen.Select(
        Gen.OneOf("", "", "", "", "~", "<", ">", "> ", "≥", "<="),
        Number,
        Gen.OneOf(Gen.Const(""), Unit),
        Gen.OneOf(
            Gen.Const(""),
            Gen.Const(""),
            Gen.Select(Gen.OneOf("/", "x", " x ", "-", " - ", "/ ", "–"), Number, Gen.OneOf(Gen.Const(""), Unit), (sign, number, unit) => sign + number + unit)),
        (bound, number, unit, rest) => bound + number + unit + rest);

    private static readonly Gen<string> Date = Gen.OneOf("2026-10-04", "2026-1-2", "2017-03", "2017", "~2017", "2026-13-01", "2026-02-29", "1899", "2200", "04/10/2026", "2026-10-04,");
    private static readonly Gen<string> Time = Gen.OneOf("07:30", "7:30pm", "12:00am", "24:00", "18:05,", "25:70", "7:5");

    private static readonly Gen<string> SiteWord = Gen.Select(
        Gen.OneOf([.. Words.Fixed("side").Spellings, "", "", ""]),
        Gen.OneOf("-", "-", " "),
        Gen.OneOf([.. Words.Regions.Spellings, "gland3", "gland 2", "R3", "208", "105"]),
        (side, join, region) => side.Length == 0 ? region : side + join + region);

    private static readonly Gen<string> LineWord = Gen.OneOf([.. Words.LineWords.Spellings, .. Words.Abbreviations("head").Spellings]);

    private static readonly Gen<string> AnyPart = Gen.Frequency(
        (3, Value),
        (1, Date),
        (1, Time),
        (2, SiteWord),
        (1, Gen.OneOf([.. Words.Fixed("side").Spellings])),
        (2, Gen.OneOf(Joining)),
        (1, LineWord),
        (1, Gen.OneOf([.. Words.Objects.Spellings])),
        (1, Gen.OneOf([.. Words.AbbreviationPlaces.SelectMany(place => Words.Abbreviations(place).Spellings)])),
        (1, Gen.OneOf(["species", "sex", "neuter", "units", "portion", "mcs", "ok"]).Select(list => Gen.OneOf([.. Words.Fixed(list).Spellings])).SelectMany(x => x)),
        (1, Gen.OneOf("benazepril", "chicken", "liver", "worming", "Vet", "vet", "technician", "wriggled", "left-ear.jpg", "a b.png", "why?")),
        (1, Gen.OneOf(OddPieces)));

    private static readonly Gen<string> Separator = Gen.Frequency(
        (12, Gen.Const(" ")), (1, Gen.Const("  ")), (1, Gen.Const(", ")), (1, Gen.Const("\t")), (1, Gen.Const("; ")), (1, Gen.Const(",")), (1, Gen.Const(": ")), (1, Gen.Const("\u00a0")));

    private static readonly Gen<string> Trail = Gen.Frequency(
        (8, Gen.Const("")), (1, Gen.Const(" ")), (1, Gen.Const("   # seen after a walk ")), (1, Gen.Const(" #")), (1, Gen.Const("\t#x")));

    private static readonly Gen<string> Indent = Gen.Frequency((4, Gen.Const("  ")), (3, Gen.Const("")), (1, Gen.Const("    ")), (1, Gen.Const("\t")), (1, Gen.Const(" ")));

    /// <summary>A line that starts with a known word; what follows mostly suits it.</summary>
    public static readonly Gen<string> Item =
        from word in LineWord
        from time in Gen.Frequency((5, Gen.Const("")), (1, Time.Select(time => time + " ")))
        from parts in Gen.Select(Separator, Part(word), (separator, part) => separator + part).Array[0, 6]
        from trail in Trail
        from upper in Gen.Int[0, 9]
        select Cased(upper, time + word + string.Concat(parts)) + trail;

    /// <summary>The head of an entry, right or wrong.</summary>
    public static readonly Gen<string> Head =
        from date in Gen.OneOf("2026-10-04", "2026-10-05", "3 nov", "2026-1-2", "2026-02-30", "04/10/2026", "2026-10-04T08:15", "2026-10-04:")
        from parts in Gen.Select(Separator, Gen.OneOf(Gen.OneOf("check", "log", "visit", "by", "by technician", "chek", "08:15", "7:30pm"), Time), (s, p) => s + p).Array[0, 3]
        from trail in Trail
        select date + string.Concat(parts) + trail;

    private static readonly Gen<string> FreeText =
        Gen.Select(Gen.OneOf(">", "> ", ">  ", ">>>> ", ">\t"), Gen.OneOf("", "He **shakes** his head.", "- a list", "# no comment", "    code  ", "狗 \ud83d\udc36"), (mark, text) => mark + text);

    /// <summary>Any characters at all, without line breaks.</summary>
    public static readonly Gen<string> Odd = Gen.Frequency(
        (3, Gen.OneOf(Gen.OneOf(OddPieces), AnyPart).Array[0, 8].Select(pieces => string.Concat(pieces))),
        (1, Gen.String.Select(text => text.Replace("\r", "").Replace("\n", ""))));

    /// <summary>Any line.</summary>
    public static readonly Gen<string> Line = Gen.Select(Indent, Gen.Frequency(
        (12, Item), (3, Head), (3, FreeText), (2, Odd), (1, Gen.Const("")), (1, Gen.OneOf("# a comment", "#", "#  # x  "))), (indent, line) => indent + line);

    /// <summary>A whole note with one kind of line break.</summary>
    public static readonly Gen<string> PlainNote = Line.Array[0, 14].Select(lines => string.Join('\n', lines));

    /// <summary>A whole note: mixed line breaks, maybe a byte-order mark, maybe no last line break.</summary>
    public static readonly Gen<string> Note = Gen.Select(
        Gen.OneOf("", "", "", "\ufeff", "\ufeff\ufeff"),
        Gen.Select(Line, Gen.OneOf("\n", "\n", "\n", "\r\n", "\r"), (line, ending) => line + ending).Array[0, 14],
        Line,
        (mark, lines, last) => mark + string.Concat(lines) + last);

    private static readonly ConcurrentDictionary<string, Gen<string>> Parts = new();

    private static Gen<string> Part(string spelling) => Parts.GetOrAdd(spelling, PartsAfter);

    private static Gen<string> PartsAfter(string spelling)
    {
        LineWord? word = Words.LineWords.Find(spelling);
        string name = word?.Word ?? Words.Abbreviations("head").Find(spelling)!.StandsFor.Split(' ')[0];
        string states = name is "med" or "missed" or "stop" ? "med" : name;
        string[] own = [.. Words.Describing(name).Spellings, .. Words.States(states).Spellings];
        return own.Length == 0 ? AnyPart : Gen.Frequency((1, AnyPart), (1, Gen.OneOf(own)));
    }

    private static string Cased(int how, string text) => how switch { 0 => text.ToUpperInvariant(), 1 => text.ToLowerInvariant(), _ => text };
}
