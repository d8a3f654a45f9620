namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Signature Help Request, SignatureHelpOptions.</summary>
internal sealed record SignatureHelpOptions(string[] TriggerCharacters);

/// <summary>3.17, Language Features, Signature Help Request.</summary>
internal sealed record SignatureHelpParams(TextDocumentIdentifier TextDocument, Position Position, SignatureHelpContext? Context = null);

/// <summary>3.17, Language Features, Signature Help Request, SignatureHelpContext.</summary>
internal sealed record SignatureHelpContext(SignatureHelpTriggerKind TriggerKind = SignatureHelpTriggerKind.Invoked);

/// <summary>3.17, Language Features, Signature Help Request, SignatureHelpTriggerKind.</summary>
internal enum SignatureHelpTriggerKind
{
    Invoked = 1,
    TriggerCharacter = 2,
    ContentChange = 3,
}

/// <summary>3.17, Language Features, Signature Help Request, SignatureHelp.</summary>
internal sealed record SignatureHelp(SignatureInformation[] Signatures, int ActiveSignature, int? ActiveParameter);

/// <summary>3.17, Language Features, Signature Help Request, SignatureInformation.</summary>
internal sealed record SignatureInformation(string Label, MarkupContent Documentation, ParameterInformation[] Parameters);

/// <summary>3.17, Language Features, Signature Help Request, ParameterInformation: its label is a part of the signature's.</summary>
internal sealed record ParameterInformation(string Label);
