using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Drawing;

/// <summary>How the pet's values went over time, one small chart a value.</summary>
internal static class ChartSection
{
    public static PageSection? Write(PageModel model) => null;
}
