namespace HealthNotes.LanguageServer.State;

/// <summary>The document is no longer as it was when the client learnt what it now asks about. 3.17, Base Protocol, ErrorCodes.ContentModified.</summary>
internal sealed class ContentModifiedException() : Exception("the note has changed since");
