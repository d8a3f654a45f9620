using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Drawing;

/// <summary>Home care day by day: what was given and missed, eaten, drunk and passed.</summary>
internal static class DayGridSection
{
    public static PageSection? Write(PageModel model) => null;
}
