using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Diagnostics;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From findings to diagnostics.</summary>
internal static class Findings
{
    /// <summary>What the diagnostics are from, in the client's eyes.</summary>
    public const string Source = "hnote";

    private const int MostEvidence = 10;

    private static readonly FrozenSet<string> WithHelp = RuleHelp.Names.ToFrozenSet();

    /// <summary>The diagnostic of a note whose text is not known any more: never that nothing was found.</summary>
    private static Diagnostic NotChecked { get; } = new(
        default, DiagnosticSeverity.Warning, "not-checked", Source, "Not checked: hnote could not read a change of this note. Close it and open it again.")
    {
        Data = new DiagnosticData("info"),
    };

    /// <summary>The diagnostics of an open document.</summary>
    public static Diagnostic[] Of(OpenNote note, Workspace workspace, CancellationToken stop = default) =>
        note.IsLost ? [NotChecked] : Of(note.Document, note.Caret, workspace, stop);

    /// <summary>
    /// The diagnostics of a document, by line, the gravest of a line last: an editor that has room for one beside a line shows
    /// the last. Gives up when told to.
    /// </summary>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public static Diagnostic[] Of(Document document, Place? caret, Workspace workspace, CancellationToken stop = default)
    {
        var shown = ShownFindings.For(document.AnalysisUnless(stop), workspace.Settings);
        ImmutableArray<NoteFinding> findings = StillTyping.Without(document, shown.Findings, caret);
        var diagnostics = new List<Diagnostic>(findings.Length + 1);
        foreach (NoteFinding finding in findings)
        {
            diagnostics.Add(Of(document, finding, workspace.Client));
        }

        if (shown.Left > 0)
        {
            diagnostics.Add(More(shown.Left));
        }

        return [.. diagnostics.OrderBy(one => one.Range.Start.Line).ThenByDescending(one => one.Severity)];
    }

    /// <summary>What could not be read: a long note shows it while the rules are still at work.</summary>
    public static Diagnostic[] Unread(Document document, ClientProfile client) =>
        [.. RuleBook.Unread(document.Note).Take(ShownFindings.Most).Select(finding => Of(document, finding, client))];

    /// <summary>One finding. What cannot wait has the severity of a reason to phone; its message says which it is.</summary>
    public static Diagnostic Of(Document document, NoteFinding finding, ClientProfile client)
    {
        string level = finding.Level.ToString().ToLowerInvariant();
        return new Diagnostic(
            Positions.Of(document, PlaceRange.Of(finding.Line, finding.Span), client.Encoding),
            SeverityOf(finding.Level),
            finding.Rule,
            Source,
            finding.Level == FindingLevel.Urgent ? $"{Wording.ForOwner(finding.Level)}: {finding.Message}" : finding.Message)
        {
            CodeDescription = client.LinksRules && WithHelp.Contains(finding.Rule) ? new CodeDescription(ContentUris.OfRule(finding.Rule)) : null,
            RelatedInformation = client.RelatedInformation ? Evidence(document, finding, client.Encoding) : null,
            Data = new DiagnosticData(level, finding.Nearest),
        };
    }

    /// <summary>The findings of one line.</summary>
    public static IEnumerable<NoteFinding> At(Document document, int line)
    {
        ImmutableArray<NoteFinding> findings = document.Analysis.Findings;
        int low = 0;
        int high = findings.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = findings[middle].Line < line ? (middle + 1, high) : (low, middle);
        }

        for (; low < findings.Length && findings[low].Line == line; low++)
        {
            yield return findings[low];
        }
    }

    /// <summary>How strongly the client shows a level: in its list of problems a reason to phone stands above a slip.</summary>
    public static DiagnosticSeverity SeverityOf(FindingLevel level) => level switch
    {
        FindingLevel.Urgent or FindingLevel.Call => DiagnosticSeverity.Error,
        FindingLevel.Error => DiagnosticSeverity.Warning,
        FindingLevel.Watch => DiagnosticSeverity.Information,
        _ => DiagnosticSeverity.Hint,
    };

    private static DiagnosticRelatedInformation[]? Evidence(Document document, NoteFinding finding, PositionEncoding encoding)
    {
        List<DiagnosticRelatedInformation>? related = null;
        for (int i = finding.Evidence.Length - 1; i >= 0 && (related?.Count ?? 0) < MostEvidence; i--)
        {
            int line = finding.Evidence[i];
            if (line != finding.Line)
            {
                string text = document.Syntax.Lines[line].Text;
                var span = TextSpan.Between(text.Length - text.AsSpan().TrimStart().Length, text.AsSpan().TrimEnd().Length);
                related ??= [];
                related.Insert(0, new DiagnosticRelatedInformation(
                    new Location(document.Uri, Positions.Of(document, PlaceRange.Of(line, span), encoding)), text.Trim()));
            }
        }

        return related?.ToArray();
    }

    private static Diagnostic More(int left) => new(
        default, DiagnosticSeverity.Information, "more-findings", Source, $"{left} more {(left == 1 ? "finding is" : "findings are")} not shown here; hnote check --all shows them")
    {
        Data = new DiagnosticData("info"),
    };
}
