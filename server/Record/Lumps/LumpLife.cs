using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Lumps;

/// <summary>
/// The life of one lump (a site and a tag), from its first line to its last; a wound and a node are read in the same way.
/// It ends where a line says that it is gone or removed; a later line of the same place begins another life.
/// </summary>
/// <param name="Key">The course it was read from.</param>
/// <param name="Lines">Its lines in order; never empty.</param>
/// <param name="Sizes">Every size that was written, in order.</param>
/// <param name="Ended">The first line that says that it is gone or removed; null while it is there.</param>
/// <param name="Looks">The lines that show that a vet has looked at it.</param>
public sealed record LumpLife(CourseKey Key, ImmutableArray<Noted> Lines, ImmutableArray<LumpSize> Sizes, Noted? Ended, ImmutableArray<VetLook> Looks)
{
    /// <summary>Its first line.</summary>
    public Noted First => Lines[0];

    /// <summary>Its last line.</summary>
    public Noted Last => Lines[^1];

    /// <summary>Site and tag, as they are shown: <c>L-flank @low</c>.</summary>
    public string Name => Key.Detail;

    /// <summary>The site; null for a node without one.</summary>
    public Site? Site => Last.Item?.Site;

    /// <summary>The tag without its <c>@</c>; null when it has none.</summary>
    public string? Tag => Last.Item?.Tag?.Name;

    /// <summary>The word by which it ended; null while it is there.</summary>
    public string? EndWord => LumpWords.End(Ended?.Item);

    /// <summary>The last size; null when none was written.</summary>
    public LumpSize? LastSize => Sizes.IsEmpty ? null : Sizes[^1];

    /// <summary>One size a day, in order: where a day has several, the one that can mean least, so that no slip of one makes a growth.</summary>
    public ImmutableArray<LumpSize> SizeOfEachDay { get; } = [.. Sizes.GroupBy(size => size.Day).Select(day => day.MinBy(size => (size.Low, size.High ?? decimal.MaxValue))!)];

    /// <summary>The last life of a course; null when the course is empty, or tells only that there is nothing.</summary>
    public static LumpLife? Of(Course course)
    {
        int start = 0;
        bool ended = false;
        for (int index = 0; index < course.Lines.Length; index++)
        {
            bool ends = LumpWords.End(course.Lines[index].Item) is not null;
            if (ended && !ends)
            {
                start = index;
            }

            ended = ends;
        }

        return course.Lines.All(line => line.Item is NotSeen) ? null : Read(course, start, course.Lines.Length);
    }

    /// <summary>All lives of a course, the oldest first.</summary>
    public static ImmutableArray<LumpLife> AllOf(Course course)
    {
        ImmutableArray<LumpLife>.Builder lives = ImmutableArray.CreateBuilder<LumpLife>();
        int start = 0;
        for (int index = 1; index <= course.Lines.Length; index++)
        {
            bool another = index < course.Lines.Length && LumpWords.End(course.Lines[index - 1].Item) is not null && LumpWords.End(course.Lines[index].Item) is null;
            if (another || index == course.Lines.Length)
            {
                if (!course.Lines[start..index].All(line => line.Item is NotSeen))
                {
                    lives.Add(Read(course, start, index));
                }

                start = index;
            }
        }

        return lives.DrainToImmutable();
    }

    private static LumpLife Read(Course course, int start, int end)
    {
        ImmutableArray<Noted> lines = course.Lines[start..end];
        return new LumpLife(
            course.Key,
            lines,
            [.. lines.Select(LumpSize.Of).OfType<LumpSize>()],
            lines.FirstOrDefault(line => LumpWords.End(line.Item) is not null),
            [.. lines.Select(VetLook.Of).OfType<VetLook>()]);
    }
}
