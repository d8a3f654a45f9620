namespace HealthNotes.Rendering.Text;

/// <summary>The words of the sheet that is filled in on a phone.</summary>
internal static partial class PageWords
{
    public const string FillLead = "Check when your pet is calm. Tap ok, or the words for what you see; leave out what you do not check. Stop if your pet struggles. At the end, send or copy the entry. Nothing is stored or sent by this page.";
    public const string FillDay = "Day";
    public const string FillTime = "Time";
    public const string FillBy = "Checked by";
    public const string FillMore = "more words";
    public const string FillOwn = "in your own words";
    public const string FillNumber = "value";
    public const string FillStart = "Start counting";
    public const string FillUndo = "Take one back";
    public const string FillSeconds = "for how long";
    public const string FillRest = "All other parts were looked at, and are ok";
    public const string FillText = "Anything else";
    public const string FillQuestion = "A question for the clinic";
    public const string FillEntry = "The entry for your notes";
    public const string FillShare = "Share";
    public const string FillCopy = "Copy";
    public const string FillCopied = "Copied. Paste it at the end of the note.";
    public const string FillNoScript = "This page needs scripts. Open the file in a browser: a preview in a mail does not run them.";

    /// <summary>The title of the file.</summary>
    public static string FillTitle(string name) => $"{name}: check to fill in";
}
