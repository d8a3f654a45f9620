using System.Xml.Linq;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>What a count in 15 or 30 seconds is in a minute.</summary>
internal static class SheetCounting
{
    private const int Minute = 60;
    private const int First = 4;
    private const int Last = 63;
    private const int Columns = 30;
    private static readonly int[] Seconds = [15, 30];

    public static XElement Of() => Tag.Of(
        "table.counting", Tag.Of("caption", PageWords.SheetCounting),
        Tag.Of("tbody", Enumerable.Range(First, Last - First + 1).Chunk(Columns).SelectMany(counts => Seconds.Select(seconds => Row("tr.minute", PageWords.SheetIn(seconds), counts.Select(count => count * Minute / seconds)))
            .Prepend(Row("tr", PageWords.SheetCount, counts)))));

    private static XElement Row(string kind, string name, IEnumerable<int> numbers) => Tag.Of(kind, Tag.Head(name), numbers.Select(number => Tag.Of("td", $"{number}")));
}
