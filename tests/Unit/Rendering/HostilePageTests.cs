using System.Security.Cryptography;
using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using CsCheck;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Rendering;

/// <summary>Whatever a note says, its page holds no code and loads nothing.</summary>
public class HostilePageTests
{
    private static readonly string[] Attacks =
    [
        "<script>alert(1)</script>", "</style><script>alert(1)</script>", "</title><svg onload=alert(1)>", "<img src=x onerror=alert(1)>",
        "\"><img src=x onerror=alert(1)>", "' onmouseover='alert(1)", "[x](javascript:alert(1))", "![x](http://example.org/x.png)",
        "<javascript:alert(1)>", "[x](JaVaScRiPt:alert(1))", "[x](data:text/html,<script>alert(1)</script>)", "[x]: javascript:alert(1)",
        "| a | b |", "a|b`c``d", "**bold** _em_ \\*x", "&lt;script&gt; &#60;b&#62;", "x\0y", "\u202Egnp.exe", "\u2068x\u2069\u2069\u2069",
        "\uD800 lone", "שלום 12", "<!-- --><![CDATA[", "<iframe src=//example.org>", "{onclick=alert(1)}", "x\u2028y\u0085z", "[x](  javascript:alert(1))",
        "[x](java&#115;cript:alert(1))", "[x](&#1;javascript:alert(1))", "<https://example.org/\"onclick=alert(1)>", "```\n# x", "- - - x", "1. x", "    code",

        // one of each kind that the OWASP XSS Filter Evasion Cheat Sheet (cheatsheetseries.owasp.org) lists, in its order
        "jaVasCript:/*-/*`/*\\`/*'/*\"/**/(/* */oNcliCk=alert(1) )//%0D%0A//</stYle/</titLe/</scRipt/--!>\\x3csVg/<sVg/oNloAd=alert(1)//>\\x3e", "<a onmouseover=alert(1)>x</a>",
        "<IMG \"\"\"><SCRIPT>alert(1)</SCRIPT>\"\\>", "<IMG SRC=javascript:alert(String.fromCharCode(49))>", "<IMG SRC=# onmouseover=alert(1)>", "<IMG SRC=/ onerror=alert(1)></img>",
        "<IMG SRC=&#106;&#97;&#118;&#97;&#115;&#99;&#114;&#105;&#112;&#116;&#58;alert(1)>", "<IMG SRC=&#0000106&#0000097&#0000118&#0000097&#0000115&#0000099&#0000114&#0000105&#0000112&#0000116&#0000058alert(1)>",
        "<IMG SRC=&#x6A&#x61&#x76&#x61&#x73&#x63&#x72&#x69&#x70&#x74&#x3Aalert(1)>", "[x](jav\tascript:alert(1))", "[x](jav&#x09;ascript:alert(1))", "[x](jav&#x0A;ascript:alert(1))", "<IMG SRC=java\0script:alert(1)>",
        "[x](&#14; javascript:alert(1))", "<SCRIPT/XSS SRC=//example.org/x.js></SCRIPT>", "<BODY onload!#$%&()*~+-_.,:;?@[/|\\]^`=alert(1)>", "<<SCRIPT>alert(1);//\\<</SCRIPT>", "<SCRIPT SRC=//example.org/x.js?< B >",
        "<SCRIPT SRC=//example.org/.j>", "<IMG SRC=`javascript:alert(1)`", "<iframe src=//example.org/x.html <", "\\\";alert(1);//", "</script><script>alert(1);</script>", "</TITLE><SCRIPT>alert(1);</SCRIPT>",
        "<INPUT TYPE=IMAGE SRC=javascript:alert(1)>", "<BODY BACKGROUND=javascript:alert(1)>", "<STYLE>li{list-style-image:url(javascript:alert(1))}</STYLE>", "[x](vbscript:msgbox(1))", "<svg/onload=alert(1)>", "<BODY ONLOAD =alert(1)>",
        "<LINK REL=stylesheet HREF=//example.org/x.css>", "<STYLE>@import'//example.org/x.css';</STYLE>", "<META HTTP-EQUIV=refresh CONTENT=\"0;url=data:text/html;base64,PHNjcmlwdD4=\">", "<BASE HREF=javascript:alert(1);//>",
        "<OBJECT TYPE=text/x-scriptlet DATA=//example.org/x.html></OBJECT>", "<EMBED SRC=data:image/svg+xml;base64,PHN2Zz4= type=image/svg+xml AllowScriptAccess=always></EMBED>", "<DIV STYLE=\"background-image:url(javascript:alert(1))\">",
        "<!--[if gte IE 4]><SCRIPT>alert(1);</SCRIPT><![endif]-->", "<? echo('<SCR)'; echo('IPT>alert(1)</SCRIPT>'); ?>", "+ADw-SCRIPT+AD4-alert(1);+ADw-/SCRIPT+AD4-", "<a href=\"\\x0Bjavascript:alert(1)\">x</a>", "[x](//example.org)", "[x](ja\u00ADvascript:alert(1))",
    ];

    public static TheoryData<string> All => [.. Attacks];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_field_stays_inert(string attack)
    {
        foreach (string line in attack.Split('\n'))
        {
            IsInert(Pages.Html(NoteFullOf(line)));
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_field_is_shown_letter_by_letter(string attack)
    {
        if (attack.Contains('\n', StringComparison.Ordinal) || attack.Any(c => char.IsControl(c) || char.IsSurrogate(c) || c is >= '\u2000' and <= '\u206F'))
        {
            return;
        }

        IHtmlDocument page = Pages.Document($"pet A\nknown {attack}\n2026-10-01 check\n  ask {attack}\n  {attack}\n");
        Assert.Contains(attack.Trim(), page.QuerySelector("section.pet")!.TextContent);
        Assert.Contains(attack.Trim(), page.QuerySelector("section.questions")?.TextContent ?? attack);
    }

    [Fact]
    public void Characters_that_turn_text_around_are_shown_not_obeyed()
    {
        string html = Pages.Html(NoteFullOf("a\u202Eb\u2066c"));
        Assert.DoesNotContain(html, c => c is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069');
        Assert.Contains("a[U+202E]b[U+2066]c", html);
    }

    [Fact]
    public void Right_to_left_text_is_set_apart_from_the_text_around_it()
    {
        Assert.Contains("<bdi>שלום 12</bdi>", Pages.Html("pet A\nknown שלום 12\n"));
        Assert.Contains("\u2068שלום 12\u2069", Pages.Markdown("pet A\nknown שלום 12\n"));
    }

    [Fact]
    public void Free_text_keeps_safe_links_and_loses_the_others()
    {
        IHtmlDocument page = Pages.Document(
            "pet A\n2026-10-01 check\n  > [a](https://example.org) [b](javascript:alert(1)) [c](left-ear.jpg) [d](mailto:a@example.org) [e](#vitals) <ftp://example.org> ![f](https://example.org/f.png)\n");
        Assert.Equal(["https://example.org", "mailto:a@example.org", "#vitals"], page.QuerySelectorAll("a").Select(a => a.GetAttribute("href")));
        Assert.Contains("[picture not shown: f (https://example.org/f.png)]", page.Section("texts"));
    }

    [Fact]
    public void Free_text_neither_adds_headings_nor_defines_links_for_others()
    {
        IHtmlDocument page = Pages.Document("pet A\n2026-10-01 check\n  > # Big\n  > [vitals]: https://example.org\n  alert bright\n  > see [vitals]\n  ask [vitals]?\n");
        Assert.Empty(page.QuerySelectorAll("blockquote h1, blockquote h2"));
        Assert.Empty(page.QuerySelectorAll("a"));
    }

    [Fact]
    public void Free_text_nested_too_deeply_is_shown_as_written()
    {
        string deep = new('>', 500);
        Assert.Contains(deep, Pages.Document($"pet A\n2026-10-01 check\n  > {deep} x\n").Section("texts"));
    }

    [Fact]
    public void Tags_in_free_text_are_text_in_the_markdown_too()
    {
        string markdown = Pages.Markdown("pet A\n2026-10-01 check\n  > a <script> \\<b> \\\\<i> 3 < 4\n");
        Assert.Contains("> a \\<script> \\<b> \\\\\\<i> 3 < 4", markdown);
    }

    [Fact]
    public void The_policy_allows_the_one_style_and_nothing_else()
    {
        IHtmlDocument page = Pages.Document(Pages.Check);
        string style = Assert.Single(page.QuerySelectorAll("style")).TextContent;
        string hash = "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        Assert.Equal(
            $"default-src 'none'; style-src '{hash}'; img-src data:; base-uri 'none'; form-action 'none'",
            page.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content"));
        Assert.DoesNotContain("url(", style);
        Assert.DoesNotContain("@import", style);
    }

    [Fact]
    public void Any_text_makes_a_page_that_is_inert()
    {
        Gen<string> line = Gen.Select(Gen.OneOf<string>("", "pet ", "known ", "2026-10-04 check ", "  ear L odour ", "  > ", "  ask ", "  lump L-flank ", "  gave ", "  photo ", "  hr 18/15s "), Gen.OneOf(Gen.OneOf<string>(Attacks), Gen.String[0, 30]), (start, rest) => start + rest);
        line.Array[0, 25].ForAll(lines => IsInert(Pages.Html(string.Join('\n', lines))), iter: 150);
    }

    private static string NoteFullOf(string text) => $"""
        pet {text}
        breed {text}
        known {text}
        owner {text}
        due {text} 2026-11-01
        med {text} 5mg every 12h
        > {text}
        2026-10-04 check by {text}
          ear L odour {text}
          ear R odour # {text}
          hr 18/15s # {text}
          lump L-flank @{text} 12mm firm # {text}
          ask {text}
          skip anus {text}
          photo {text}
          photo a.jpg {text}
          gave {text} 5mg
          ate 3/4 {text}
          {text}
          > {text}
          done {text}
        2026-10-05 {text}
        """;

    private static void IsInert(string html)
    {
        // What a file can hold: a lone surrogate would not survive being written.
        Assert.Equal(html, Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(html)));
        Assert.DoesNotContain('\0', html);
        IHtmlDocument page = new HtmlParser().ParseDocument(html);
        Assert.Empty(page.QuerySelectorAll("script, iframe, object, embed, img, link, base, form, input, video, audio, source, math, template, foreignObject, use, image, animate, set"));
        Assert.DoesNotContain(page.QuerySelectorAll("svg"), svg => svg.ClassList.Contains("chart") == svg.ClassList.Contains("body-map"));
        Assert.Empty(page.QuerySelectorAll("svg a"));
        Assert.Single(page.QuerySelectorAll("h1"));
        Assert.Single(page.QuerySelectorAll("style"));
        Assert.Single(page.QuerySelectorAll("main"));
        Assert.Single(page.QuerySelectorAll("footer"));
        foreach (IElement element in page.All)
        {
            foreach (IAttr attribute in element.Attributes)
            {
                Assert.False(attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase), attribute.Name);
                Assert.False(attribute.Name is "style" or "src" or "srcset" or "action", attribute.Name);
                if (attribute.Name == "href")
                {
                    Assert.Matches("^(https?://|mailto:|#|tel:[+]?[0-9]{6,15}$)", attribute.Value);
                }
            }
        }
    }
}
