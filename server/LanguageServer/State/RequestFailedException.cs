namespace HealthNotes.LanguageServer.State;

/// <summary>A request that is right in form and can't be done; the message says why, in plain words. 3.17, Base Protocol, ErrorCodes.RequestFailed.</summary>
internal sealed class RequestFailedException(string why) : Exception(why);
