using HealthNotes.Features.Documents;
using HealthNotes.Features.Navigation;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Symbols;

/// <summary>What a note holds that can be looked for by name, and how well a name fits what is typed.</summary>
internal static class FolderSearch
{
    /// <summary>How many grades <see cref="Grade"/> has.</summary>
    public const int Grades = 3;

    /// <summary>The pet.</summary>
    public static IEnumerable<FolderSymbol> Pets(Document document)
    {
        foreach (Placed<NoteItem> fact in document.Note.Opening.Facts)
        {
            if (fact.Value is TextFact { Word.Word: "pet" } pet)
            {
                yield return Symbol(document, pet.Text.Text, SymbolSort.Pet, fact.Line, pet.Text.Span);
                yield break;
            }
        }
    }

    /// <summary>The medicines that have a plan, each once.</summary>
    public static IEnumerable<FolderSymbol> Medicines(Document document)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (DatedFact<MedicinePlan> plan in document.Note.Facts<MedicinePlan>())
        {
            if (seen.Add(plan.Fact.Medicine.Text))
            {
                yield return Symbol(document, plan.Fact.Medicine.Text, SymbolSort.Medicine, plan.Line, plan.Fact.Medicine.Span);
            }
        }
    }

    /// <summary>The lumps, wounds and sore places, each where it is first noted.</summary>
    public static IEnumerable<FolderSymbol> Findings(Document document)
    {
        var seen = new HashSet<Subject>();
        foreach (Entry entry in document.Note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (item.Value is Finding finding && seen.Add(Subject.Of(finding)!))
                {
                    LineSyntax line = document.Syntax.Lines[item.Line];
                    string tag = finding.Tag is null ? "" : $" @{finding.Tag.Name}";
                    yield return Symbol(document, $"{finding.Word.Word} {finding.Site.Name}{tag}", SymbolSort.Finding, item.Line, LineShape.Content(line));
                }
            }
        }
    }

    /// <summary>The entries, newest first in the file's order.</summary>
    public static IEnumerable<FolderSymbol> Entries(Document document)
    {
        for (int index = document.Note.Entries.Length - 1; index >= 0; index--)
        {
            Entry entry = document.Note.Entries[index];
            yield return Symbol(document, SymbolNames.Of(entry, document.Syntax), SymbolSort.Entry, entry.Line, LineShape.Content(document.Syntax.Lines[entry.Line]));
        }
    }

    /// <summary>0 for a name that starts with what is typed, 1 for one that holds it, 2 for one that holds its letters in order; null for none.</summary>
    public static int? Grade(string name, string query)
    {
        int at = name.IndexOf(query, StringComparison.OrdinalIgnoreCase);
        return at == 0 ? 0 : at > 0 ? 1 : HoldsInOrder(name, query) ? 2 : null;
    }

    private static bool HoldsInOrder(string name, string query)
    {
        int at = 0;
        foreach (char letter in query)
        {
            if (char.IsWhiteSpace(letter))
            {
                continue;
            }

            while (at < name.Length && char.ToUpperInvariant(name[at]) != char.ToUpperInvariant(letter))
            {
                at++;
            }

            if (at++ >= name.Length)
            {
                return false;
            }
        }

        return true;
    }

    private static FolderSymbol Symbol(Document document, string name, SymbolSort sort, int line, TextSpan span) =>
        new(name, sort == SymbolSort.Pet ? null : document.Note.Opening.Text("pet"), sort, document.Uri, PlaceRange.Of(line, span));
}
