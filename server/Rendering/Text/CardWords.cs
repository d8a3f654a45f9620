namespace HealthNotes.Rendering.Text;

/// <content>The words of the card.</content>
internal static partial class PageWords
{
    public const string CardTitle = "What to type in a health note";
    public const string CardLead = "One line, one observation. Start a day with its date. Write what you counted, not what you worked out. Capitals and the order of words do not matter. A line that is not understood is kept, and you are told.";
    public const string CardDay = "A usual day";
    public const string CardCheck = "A monthly check";
    public const string CardSay = "No, gone, missed, skip, ask";
    public const string CardClinic = "My clinic:";
}
