using System.Text;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

/// <summary>What is offered in the samples.</summary>
public class SampleActionTests
{
    private const string Mistakes = "full-of-mistakes.hnote";

    public static TheoryData<string> Readable => [.. Repository.Samples.Select(path => Path.GetFileName(path)).Where(name => name != Mistakes)];

    /// <summary>The fixes of every mistake in one list, for a person to read; then what fix all does.</summary>
    [Fact]
    public void What_is_offered_for_each_mistake()
    {
        Document document = Open(Mistakes);
        var text = new StringBuilder();
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            ActionOffer[] fixes = [.. ActionFeature.In(document, PlaceRange.At(line, 0), FeatureSettings.Default).Where(offer => offer.Kind == ActionKind.QuickFix)];
            if (fixes.Length > 0 || document.Analysis.Findings.Any(finding => finding.Line == line && finding.Level == FindingLevel.Error))
            {
                string written = document.Syntax.Lines[line].Text;
                text.Append(line + 1).Append(": ").AppendLine(written[..Math.Min(written.Length, 60)].Trim());
                foreach (ActionOffer fix in fixes)
                {
                    text.Append(fix.IsPreferred ? "    * " : "    - ").Append(fix.Id).Append(": ").AppendLine(fix.Title);
                }
            }
        }

        text.AppendLine().AppendLine("fix all:");
        foreach (DocumentEdit edit in ActionFeature.FixAll(document))
        {
            Document after = document.Edit(edit, 2);
            text.Append(edit.Range.Start.Line + 1).Append(": ").AppendLine(after.Syntax.Lines[edit.Range.Start.Line].Text.Trim());
        }

        Snapshots.Match(text.ToString().ReplaceLineEndings("\n"), "mistakes");
    }

    [Theory]
    [MemberData(nameof(Readable))]
    public void Where_nothing_is_wrong_there_is_nothing_to_mend(string name)
    {
        Document document = Open(name);
        Assert.Empty(ActionFeature.FixAll(document));
        Assert.Empty(ActionFeature.In(document, new PlaceRange(new Place(0, 0), new Place(int.MaxValue, 0)), FeatureSettings.Default).Where(offer => offer.Kind == ActionKind.QuickFix && offer.Id != "count-time"));
    }

    /// <summary>Plain words mean what the abbreviations meant, line by line, and none is left.</summary>
    [Theory]
    [MemberData(nameof(Readable))]
    public void Plain_words_change_no_meaning(string name)
    {
        Document document = Open(name);
        string plain = Cursor.Apply(document, ActionFeature.Resolve(document, "expand-abbreviations:note"));
        Assert.Equal(document.Syntax.Lines.Select(MeaningPrinter.Print), NoteSyntax.Parse(plain).Lines.Select(MeaningPrinter.Print));
        Assert.Empty(ActionFeature.Resolve(Document.Open("file:///a.hnote", 2, plain, Cursor.Today), "expand-abbreviations:note"));
    }

    [Fact]
    public void The_abbreviated_log_has_abbreviations() => Assert.NotEmpty(ActionFeature.Resolve(Open("juniper-after-surgery.hnote"), "expand-abbreviations:note"));

    [Fact]
    public void A_key_that_is_not_known_does_nothing() => Assert.Empty(ActionFeature.Resolve(Open(Mistakes), "no such thing"));

    private static Document Open(string name) => Document.Open("file:///" + name, 1, File.ReadAllText(Repository.PathOf("samples/" + name)), Cursor.Today);
}
