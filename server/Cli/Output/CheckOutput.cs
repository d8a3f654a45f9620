using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Xml;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;

namespace HealthNotes.Cli.Output;

/// <summary>The outcome of a check in one form. Notes come one after the other; then comes its end.</summary>
internal abstract class CheckOutput : IDisposable
{
    /// <summary>Every form by its name.</summary>
    public static IReadOnlyDictionary<string, Func<TextWriter, CheckOutput>> Forms { get; } = new Dictionary<string, Func<TextWriter, CheckOutput>>
    {
        ["text"] = output => new TextCheck(output),
        ["json"] = _ => new JsonCheck(),
        ["sarif"] = _ => new SarifCheck(),
        ["github"] = output => new GitHubCheck(output),
        ["junit"] = _ => new JUnitCheck(),
    };

    /// <summary>The forms in which what is printed of a note depends on that note alone.</summary>
    public static IReadOnlySet<string> NoteByNote { get; } = new HashSet<string> { "text", "github" };

    public abstract void Note(string path, NoteAnalysis analysis, PlainFindings shown);

    public abstract void End();

    public virtual void Dispose() => GC.SuppressFinalize(this);
}

/// <summary>For a person.</summary>
internal sealed class TextCheck(TextWriter output) : CheckOutput
{
    public override void Note(string path, NoteAnalysis analysis, PlainFindings shown) => CheckPrinter.Print(output, path, analysis, shown);

    public override void End() => output.WriteLine("hnote compares and describes; it makes no diagnosis. A veterinarian decides.");
}

/// <summary>Our own JSON, which has every finding.</summary>
internal sealed class JsonCheck : CheckOutput
{
    private readonly List<FileReport> reports = [];

    public override void Note(string path, NoteAnalysis analysis, PlainFindings shown) => reports.Add(ContractReports.Check(path, analysis, shown));

    public override void End() => Terminal.WriteJson(JsonSerializer.Serialize(new CheckReport(reports), ContractJson.Readable.CheckReport));
}

/// <summary>SARIF 2.1.0 (OASIS), for code hosts and viewers.</summary>
internal sealed class SarifCheck : CheckOutput
{
    private readonly Stream stream = Terminal.OpenOutput();
    private readonly Utf8JsonWriter json;

    public SarifCheck()
    {
        json = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default });
        json.WriteStartObject();
        json.WriteString("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "hnote");
        json.WriteString("version", typeof(SarifCheck).Assembly.GetName().Version?.ToString(3));
        json.WriteStartArray("rules");
        foreach (string rule in RuleHelp.Names)
        {
            string[] help = RuleHelp.For(rule)!.ReplaceLineEndings("\n").Split('\n');
            json.WriteStartObject();
            json.WriteString("id", rule);
            Text("shortDescription", help[1]);
            Text("help", $"hnote about {rule}");
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartArray("results");
    }

    public override void Note(string path, NoteAnalysis analysis, PlainFindings shown)
    {
        foreach (NoteFinding finding in shown.Findings)
        {
            json.WriteStartObject();
            json.WriteString("ruleId", finding.Rule);
            json.WriteString("level", finding.Level switch { FindingLevel.Info => "note", FindingLevel.Watch => "warning", _ => "error" });
            Text("message", finding.Message);
            json.WriteStartArray("locations");
            Location(path, finding.Line, (finding.Span.Start, finding.Span.End));
            json.WriteEndArray();
            json.WriteStartArray("relatedLocations");
            foreach (int line in finding.Evidence.Where(line => line != finding.Line))
            {
                Location(path, line, null);
            }

            json.WriteEndArray();
            json.WriteStartObject("partialFingerprints");
            json.WriteString("hnote/v1", Baseline.PrintOf(analysis, finding));
            json.WriteEndObject();
            json.WriteStartObject("properties");
            json.WriteString("level", finding.Level.ToString().ToLowerInvariant());
            json.WriteString("source", finding.Source);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.Flush();
    }

    public override void End()
    {
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
    }

    public override void Dispose()
    {
        json.Dispose();
        stream.Dispose();
        base.Dispose();
    }

    private void Text(string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    private void Location(string path, int line, (int Start, int End)? span)
    {
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", Path.IsPathRooted(path) ? new Uri(path).AbsoluteUri : Uri.EscapeDataString(path.Replace('\\', '/')).Replace("%2F", "/", StringComparison.Ordinal));
        json.WriteEndObject();
        json.WriteStartObject("region");
        json.WriteNumber("startLine", line + 1);
        if (span is { } columns)
        {
            json.WriteNumber("startColumn", columns.Start + 1);
            json.WriteNumber("endColumn", columns.End + 1);
        }

        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }
}

/// <summary>The commands by which a workflow on GitHub marks lines of a change.</summary>
internal sealed class GitHubCheck(TextWriter output) : CheckOutput
{
    public override void Note(string path, NoteAnalysis analysis, PlainFindings shown)
    {
        foreach (NoteFinding finding in shown.Findings)
        {
            string command = finding.Level switch { FindingLevel.Info => "notice", FindingLevel.Watch => "warning", _ => "error" };
            output.WriteLine($"::{command} file={Property(path)},line={finding.Line + 1},col={finding.Span.Start + 1},endColumn={finding.Span.End + 1},title={finding.Rule}::{Escaped(finding.Message)}");
        }
    }

    public override void End()
    {
    }

    private static string Escaped(string text) => text.Replace("%", "%25", StringComparison.Ordinal).Replace("\r", "%0D", StringComparison.Ordinal).Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string text) => Escaped(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}

/// <summary>JUnit's XML, which build servers show as tests: a suite a note, a case a finding. What is not a reason to phone passes.</summary>
internal sealed class JUnitCheck : CheckOutput
{
    private readonly Stream stream = Terminal.OpenOutput();
    private readonly XmlWriter xml;

    public JUnitCheck()
    {
        xml = XmlWriter.Create(stream, new XmlWriterSettings { Indent = true, Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), CheckCharacters = false });
        xml.WriteStartElement("testsuites");
    }

    public override void Note(string path, NoteAnalysis analysis, PlainFindings shown)
    {
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", Clean(path));
        xml.WriteAttributeString("tests", $"{Math.Max(1, shown.Findings.Count)}");
        xml.WriteAttributeString("failures", $"{shown.Findings.Count(finding => finding.Level >= FindingLevel.Call)}");
        if (shown.Findings.Count == 0)
        {
            Case(path, "no finding");
            xml.WriteEndElement();
        }

        foreach (NoteFinding finding in shown.Findings)
        {
            Case(path, $"line {finding.Line + 1}: {finding.Rule}");
            bool fails = finding.Level >= FindingLevel.Call;
            xml.WriteStartElement(fails ? "failure" : "system-out");
            if (fails)
            {
                xml.WriteAttributeString("message", Clean(finding.Message));
                xml.WriteAttributeString("type", finding.Level.ToString().ToLowerInvariant());
            }

            xml.WriteString(Clean($"{finding.Level.ToString().ToLowerInvariant()}: {finding.Message}\n{path}:{finding.Line + 1}: {analysis.Note.Syntax.Lines[finding.Line].Text.Trim()}"));
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    public override void End()
    {
        xml.WriteEndElement();
        xml.Dispose();
        stream.Dispose();
    }

    private void Case(string path, string name)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", Clean(path));
        xml.WriteAttributeString("name", name);
    }

    /// <summary>What XML has no place for, such as a control character, stands there as a question mark.</summary>
    private static string Clean(string text)
    {
        for (int at = 0; at < text.Length; at++)
        {
            if (char.IsHighSurrogate(text[at]) && at + 1 < text.Length && char.IsLowSurrogate(text[at + 1]))
            {
                at++;
            }
            else if (!XmlConvert.IsXmlChar(text[at]))
            {
                text = text[..at] + '?' + text[(at + 1)..];
            }
        }

        return text;
    }
}
