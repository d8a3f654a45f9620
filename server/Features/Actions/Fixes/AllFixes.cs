using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// Does everything that is certain, line by line, each line until nothing certain is left in it. So the edits of two lines
/// never meet, and doing it again finds nothing to do.
/// </summary>
internal static class AllFixes
{
    /// <summary>One edit for each line that can be fixed, from its first changed character to its last.</summary>
    public static ImmutableArray<DocumentEdit> Of(Document document)
    {
        ImmutableArray<DocumentEdit>.Builder edits = ImmutableArray.CreateBuilder<DocumentEdit>();
        Species species = Species.Unknown;
        int opening = document.Note.Entries.Length > 0 ? document.Note.Entries[0].Line : document.Syntax.Lines.Length;
        int done = 0;
        foreach (int line in document.Analysis.Findings.Where(f => f.Level == FindingLevel.Error).Select(f => f.Line).Distinct())
        {
            for (; done < line && done < opening; done++)
            {
                species = Say(species, document.Syntax.Lines[done].Item);
            }

            Entry? entry = document.Note.EntryAt(line);
            string before = document.Syntax.Lines[line].Text;
            LineSyntax after = Corrected(document, line, new Trial(species, entry?.Head.Kind, document.Today));
            if (done == line && done < opening)
            {
                species = Say(species, after.Item);
                done++;
            }

            if (after.Text != before)
            {
                edits.Add(Difference(line, before, after.Text));
            }
        }

        return edits.DrainToImmutable();
    }

    /// <summary>The first line that says the species counts; one that this very run fixes counts too, as it will the next time.</summary>
    private static Species Say(Species before, NoteItem? item) => before == Species.Unknown && item is SpeciesFact fact ? fact.Species : before;

    /// <summary>The line with everything certain done.</summary>
    private static LineSyntax Corrected(Document document, int line, Trial trial)
    {
        var at = new LineAt(document, line, trial, trial.Read(document.Syntax.Lines[line].Text));
        while (at.Read.Errors.SelectMany(error => FixBook.InLine(at, error)).FirstOrDefault(fix => fix.Certain) is { } fix)
        {
            at = at with { Read = trial.Read(fix.In(at.Text)) };
        }

        return at.Line;
    }

    /// <summary>The smallest edit that makes one text into the other; it never parts the halves of a character.</summary>
    private static DocumentEdit Difference(int line, string before, string after)
    {
        int start = before.AsSpan().CommonPrefixLength(after);
        start -= start > 0 && char.IsHighSurrogate(before[start - 1]) ? 1 : 0;
        int most = Math.Min(before.Length, after.Length) - start;
        int same = 0;
        while (same < most && before[^(same + 1)] == after[^(same + 1)])
        {
            same++;
        }

        same -= same > 0 && char.IsLowSurrogate(before[^same]) ? 1 : 0;
        return new DocumentEdit(PlaceRange.Of(line, TextSpan.Between(start, before.Length - same)), after[start..^same]);
    }
}
