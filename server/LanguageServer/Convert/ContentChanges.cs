using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From the client's content changes to the next version of a document.</summary>
internal static class ContentChanges
{
    private const char Mark = '\uFEFF';

    /// <summary>The document after the changes, in their order, and where the last one ended.</summary>
    public static OpenNote Apply(OpenNote note, TextDocumentContentChangeEvent[] changes, int version, PositionEncoding encoding)
    {
        // a part of a text that is not known says nothing; the whole text does
        int from = note.IsLost ? Array.FindLastIndex(changes, change => change.Range is null) : 0;
        foreach (TextDocumentContentChangeEvent change in from < 0 ? [] : changes[from..])
        {
            note = Apply(note.Document, change, version, encoding);
        }

        return note;
    }

    private static OpenNote Apply(Document document, TextDocumentContentChangeEvent change, int version, PositionEncoding encoding)
    {
        string text = change.Text ?? "";
        if (change.Range is not { } range)
        {
            return new OpenNote(Document.Open(document.Uri, version, text, document.Today), null);
        }

        PlaceRange places = Places.Of(document, range, encoding);
        if (document.Syntax.ByteOrderMark && TouchesMark(range))
        {
            return new OpenNote(Document.Open(document.Uri, version, WithMarkReplaced(document, places, range, text), document.Today), null);
        }

        Document edited = document.Edit(new DocumentEdit(places, text), version);
        return new OpenNote(edited, edited.Clamp(EndOf(places.Start, text)));
    }

    /// <summary>True when the change starts before the byte-order mark, which our places have no name for.</summary>
    private static bool TouchesMark(Protocol.Range range) => range.Start is { Line: 0, Character: <= 0 };

    private static string WithMarkReplaced(Document document, PlaceRange places, Protocol.Range range, string text)
    {
        string rest = document.Edit(new DocumentEdit(places, ""), document.Version).Syntax.Print()[1..];
        return range.End == range.Start ? text + Mark + rest : text + rest;
    }

    /// <summary>Where a text ends that was put in at a place.</summary>
    private static Place EndOf(Place start, string text)
    {
        int breaks = 0;
        int last = -1;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                breaks++;
                last = i;
            }
        }

        return breaks == 0 ? new Place(start.Line, start.Character + text.Length) : new Place(start.Line + breaks, text.Length - last - 1);
    }
}
