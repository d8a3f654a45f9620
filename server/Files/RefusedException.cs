namespace HealthNotes.Files;

/// <summary>Something the user asked for cannot be done; the message says what, in plain words.</summary>
public sealed class RefusedException(string message) : Exception(message);
