using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Symbols;

/// <summary>The outline of a note, and what can be found by name in a folder of notes.</summary>
public static class SymbolFeature
{
    /// <summary>The most symbols that a search gives.</summary>
    public const int MostFound = 200;

    /// <summary>The opening with its facts, then the entries with their lines.</summary>
    public static ImmutableArray<OutlineSymbol> Outline(Document document)
    {
        ImmutableArray<OutlineSymbol>.Builder outline = ImmutableArray.CreateBuilder<OutlineSymbol>(document.Note.Entries.Length + 1);
        if (Opening(document) is { } opening)
        {
            outline.Add(opening);
        }

        var details = new EntryDetails(document);
        for (int index = 0; index < document.Note.Entries.Length; index++)
        {
            Entry entry = document.Note.Entries[index];
            int last = LineShape.LastWritten(document, entry.Line, LineShape.EndOf(document, index));
            outline.Add(new OutlineSymbol(
                SymbolNames.Of(entry, document.Syntax),
                details.Of(document, index),
                SymbolSort.Entry,
                LineShape.Lines(document, entry.Line, last),
                PlaceRange.Of(entry.Line, LineShape.Content(document.Syntax.Lines[entry.Line])),
                [.. entry.Items.Select(item => Child(document, item))]));
        }

        return outline.DrainToImmutable();
    }

    /// <summary>
    /// The pets, medicines, lumps, wounds and entries whose names hold the letters of <paramref name="query"/> in that order,
    /// whatever their case; the closest first.
    /// </summary>
    public static ImmutableArray<FolderSymbol> InWorkspace(IEnumerable<Document> documents, string query)
    {
        string wanted = query.Trim();
        List<Document> all = [.. documents];
        List<FolderSymbol>[] found = [.. Enumerable.Range(0, FolderSearch.Grades).Select(_ => new List<FolderSymbol>())];
        foreach (FolderSymbol symbol in ((Func<Document, IEnumerable<FolderSymbol>>[])[FolderSearch.Pets, FolderSearch.Medicines, FolderSearch.Findings, FolderSearch.Entries]).SelectMany(kind => all.SelectMany(kind)))
        {
            if (FolderSearch.Grade(symbol.Name, wanted) is { } grade && found[grade].Count < MostFound)
            {
                found[grade].Add(symbol);
                if (found[0].Count == MostFound)
                {
                    break;
                }
            }
        }

        return [.. found.SelectMany(symbols => symbols).Take(MostFound)];
    }

    private static OutlineSymbol? Opening(Document document)
    {
        ImmutableArray<Placed<NoteItem>> facts = document.Note.Opening.Facts;
        if (facts.IsEmpty)
        {
            return null;
        }

        Placed<NoteItem>? pet = facts.FirstOrDefault(fact => fact.Value is TextFact { Word.Word: "pet" });
        int last = LineShape.LastWritten(document, facts[^1].Line, LineShape.EndOf(document, -1));
        return new OutlineSymbol(
            document.Note.Opening.Text("pet") ?? "Facts",
            document.Note.Opening.Text("breed"),
            SymbolSort.Pet,
            LineShape.Lines(document, facts[0].Line, last),
            Child(document, pet ?? facts[0]).Range,
            [.. facts.Where(fact => fact != pet).Select(fact => Child(document, fact))]);
    }

    private static OutlineSymbol Child(Document document, Placed<NoteItem> item)
    {
        LineSyntax line = document.Syntax.Lines[item.Line];
        TextSpan content = LineShape.Content(line);
        TextSpan name = SymbolNames.NameIn(line, item.Value);
        string detail = line.Text.AsSpan(name.End, content.End - name.End).Trim(" \t,:;").ToString();
        return new OutlineSymbol(
            name.In(line.Text).ToString(),
            detail.Length == 0 ? null : detail,
            SymbolNames.SortOf(item.Value),
            PlaceRange.Of(item.Line, content),
            PlaceRange.Of(item.Line, name),
            []);
    }
}
