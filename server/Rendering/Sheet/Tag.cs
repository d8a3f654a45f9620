using System.Xml.Linq;

namespace HealthNotes.Rendering.Sheet;

/// <summary>Makes the elements of a sheet: every text in them is escaped when they are written.</summary>
internal static class Tag
{
    /// <summary>An element; it has an end tag even when it holds nothing.</summary>
    /// <param name="name">Its name, with its class behind a dot: <c>td.last</c>.</param>
    /// <param name="content">Text, elements and attributes; null adds nothing.</param>
    public static XElement Of(string name, params object?[] content)
    {
        string[] parts = name.Split('.', 2);
        return new XElement(parts[0], parts.Length > 1 ? new XAttribute("class", parts[1].Replace('.', ' ')) : null, content, parts[0] == "br" ? null : "");
    }

    /// <summary>A table with its caption and the names of its columns.</summary>
    public static XElement Table(string name, string caption, IEnumerable<string> columns, IEnumerable<XElement> rows) => Of(
        name, Of("caption", caption), Of("thead", Of("tr", columns.Select(column => Of("th", new XAttribute("scope", "col"), column)))), Of("tbody", rows));

    /// <summary>The cell that names a row.</summary>
    public static XElement Head(params object?[] content) => Of("th", new XAttribute("scope", "row"), content);

    /// <summary>Text of a note, set apart from what runs in another direction.</summary>
    public static XElement Bdi(string text) => Of("bdi", text);

    /// <summary>Room to write in.</summary>
    public static XElement Field() => Of("span.field");

    /// <summary>A box to tick.</summary>
    public static XElement Box() => Of("span.box");

    /// <summary>A list under a heading; nothing when nothing is on it.</summary>
    public static IEnumerable<XElement> List(string heading, IReadOnlyCollection<object> items, string rank = "h3") => items.Count == 0 ? [] : [Of(rank, heading), Of("ul", items.Select(item => Of("li", item)))];
}
