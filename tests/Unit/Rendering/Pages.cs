using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;

namespace HealthNotes.Tests.Rendering;

/// <summary>The only place where these tests make pages.</summary>
internal static class Pages
{
    public static readonly DateOnly Today = new(2026, 10, 5);

    public static string Markdown(string note) => VisitPage.Markdown(Analyse(note));

    public static string Html(string note) => VisitPage.Html(Analyse(note));

    public static IHtmlDocument With(string note, PageOptions options) => new HtmlParser().ParseDocument(VisitPage.Html(Analyse(note), options));

    public static IHtmlDocument Document(string note) => new HtmlParser().ParseDocument(Html(note));

    public static IHtmlDocument Document(string note, DateOnly today) => new HtmlParser().ParseDocument(VisitPage.Html(NoteAnalysis.Of(Note.Read(note), today)));

    public static NoteAnalysis Analyse(string note) => NoteAnalysis.Of(Note.Read(note), Today);

    /// <summary>A section's text, blanks joined.</summary>
    public static string Section(this IHtmlDocument page, string key) =>
        string.Join(' ', (page.QuerySelector($"section.{key}")?.TextContent ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The rows of a section's tables, cells joined by a bar.</summary>
    public static string[] Rows(this IHtmlDocument page, string key) =>
        [.. page.QuerySelectorAll($"section.{key} tbody tr").Select(row => string.Join(" | ", row.Children.Select(cell => cell.TextContent)))];

    public const string Check = """
        # Invented for the tests.
        pet Marlow
        species dog
        breed lurcher type
        sex male neutered
        born 2017-03
        adult-weight 27kg
        known heart murmur since 2026-01
        allergy chicken
        usual rr 16-24 asleep per vet 2026-01-20
        call-if rr asleep >32 per vet 2026-01-20
        med benazepril 5mg every 24h from 2026-01-20 with food
        home-check every 30d
        owner the household at Larch Lane

        2026-09-04 check
          gait lame
          lump L-flank 10mm soft moves sampled
          weight 27.3kg

        2026-10-04 08:15 check
          alert bright
          ear L odour brown wax
          gums pale moist
          bcs 5/9
          hr 18/15s
          rr 9/15s asleep
          temp 101.5F rectal
          weight 83.2-55.9kg
          lump L-flank 12x9mm soft moves
          lump R-gland3 @lower like pea firm
          skip anus refused
          photo left-ear.jpg after the swim
          > He shakes his head **more** after swimming.
          ask does the ear need drops again?
          recheck ear L in 2w

        2026-10-05 log by technician
          07:30 gave benazepril 5mg
          18:30 stool soft 2x
          21:00 vomit 1x
          blah blup at him
        """;
}
