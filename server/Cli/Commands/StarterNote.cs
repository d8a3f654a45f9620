using System.Globalization;
using System.Text;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;

namespace HealthNotes.Cli.Commands;

/// <summary>The text of a new note: the facts, and a first check whose lines wait as comments to be filled in.</summary>
internal static class StarterNote
{
    public static string Write(IEnumerable<string> facts, DateOnly today)
    {
        var text = new StringBuilder();
        text.Append("# Health notes. A line that starts with # is a comment. Words and examples: see LANGUAGE.md, or hnote --help.\n");
        foreach (string fact in facts)
        {
            text.Append(fact).Append('\n');
        }

        text.Append('\n').Append(today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)).Append(" check\n");
        text.Append("""
              # Take the # away from a line and write what you saw. Leave out what you did not look at, or say: skip ear refused
              # Do not handle a pet that may bite, and stop if it struggles.
              # alert bright
              # stance square
              # gait even
              # coat glossy
              # bcs 5/9
              # eye both clear
              # ear both clean
              # gums pink moist
              # crt 1.5s
              # node L-jaw small
              # hr 18/15s
              # rr 6/15s asleep
              # weight 21.4kg
              # lump L-flank 12mm soft
              # ask what should I watch for?
              # else ok

            """.ReplaceLineEndings("\n"));
        return NoteFormatter.Format(NoteSyntax.Parse(text.ToString()));
    }
}
