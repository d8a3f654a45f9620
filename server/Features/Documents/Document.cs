using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record;

namespace HealthNotes.Features.Documents;

/// <summary>
/// One version of one document: what every feature looks at. Immutable; an edit gives a new one that shares what did not
/// change. What is worked out from it is worked out once, when first asked for.
/// </summary>
public sealed class Document
{
    private readonly Deferred<PetRecord> record;
    private readonly Deferred<NoteAnalysis> analysis;

    private Document(string uri, int version, Note note, DateOnly today, Document? before, EntryChange change)
    {
        Uri = uri;
        Version = version;
        Note = note;
        Today = today;
        PetRecord MakeRecord(PetRecord? old, EntryChange since, CancellationToken stop) => old?.After(note, since) ?? PetRecord.Of(note, today);
        NoteAnalysis Analyse(NoteAnalysis? old, EntryChange since, CancellationToken stop) => NoteAnalysis.Of(Record, old, since, stop);
        record = before?.record.After(change, MakeRecord) ?? new(MakeRecord);
        analysis = before?.analysis.After(change, Analyse) ?? new(Analyse);
    }

    /// <summary>The name its editor knows it by.</summary>
    public string Uri { get; }

    /// <summary>The editor's number of this version.</summary>
    public int Version { get; }

    /// <summary>The day it is read on.</summary>
    public DateOnly Today { get; }

    /// <summary>The note, typed.</summary>
    public Note Note { get; }

    /// <summary>Its tree: the lines.</summary>
    public NoteSyntax Syntax => Note.Syntax;

    /// <summary>What it tells of the pet. It does not wait for the rules.</summary>
    public PetRecord Record => record.Get(CancellationToken.None);

    /// <summary>What has been worked out from it.</summary>
    public NoteAnalysis Analysis => analysis.Get(CancellationToken.None);

    /// <summary>Reads a text.</summary>
    public static Document Open(string uri, int version, string text, DateOnly today) => Open(uri, version, Note.Read(text), today);

    /// <summary>The document of a note that is read already.</summary>
    public static Document Open(string uri, int version, Note note, DateOnly today) => new(uri, version, note, today, null, default);

    /// <summary>The document after an edit. A place past the end of its line or of the text counts as that end.</summary>
    public Document Edit(DocumentEdit edit, int version)
    {
        Place start = Clamp(edit.Range.Start);
        Place end = Clamp(edit.Range.End);
        if (end < start)
        {
            (start, end) = (end, start);
        }

        LineSyntax last = Syntax.Lines[end.Line];
        string text = string.Concat(Syntax.Lines[start.Line].Text.AsSpan(0, start.Character), edit.NewText, string.Concat(last.Text.AsSpan(end.Character), last.Ending));
        int first = start.Line;
        if (text.StartsWith('\n') && first > 0 && Syntax.Lines[first - 1].Ending == "\r")
        {
            // the two characters become one line break
            first--;
            text = Syntax.Lines[first].Text + "\r" + text;
        }

        (Note note, EntryChange change) = Note.WithLines(first, end.Line - first + 1, text, Syntax.Vocabulary);
        return new Document(Uri, version, note, Today, this, change);
    }

    /// <summary>The same document with its note under other rules of the clinic; this one where there are none and were none.</summary>
    public Document Under(Note note) => note.Clinic.IsEmpty && Note.Clinic.IsEmpty ? this : Open(Uri, Version, note, Today);

    /// <summary>The same document, read on another day.</summary>
    public Document On(DateOnly today) => today == Today ? this : new(Uri, Version, Note, today, null, default);

    /// <summary>What has been worked out from it; gives up when told to.</summary>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public NoteAnalysis AnalysisUnless(CancellationToken stop) => analysis.Get(stop);

    /// <summary>The nearest place that exists.</summary>
    public Place Clamp(Place place)
    {
        int line = Math.Clamp(place.Line, 0, Syntax.Lines.Length - 1);
        int length = Syntax.Lines[line].Text.Length;
        return new Place(line, place.Line > line ? length : place.Line < 0 ? 0 : Math.Clamp(place.Character, 0, length));
    }
}
