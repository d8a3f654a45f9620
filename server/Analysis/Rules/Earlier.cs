using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// What a rule asks about other entries. Questions and answers are kept: findings hold as long as the same questions would
/// be answered the same way, however the rest of the note changes.
/// </summary>
public sealed class Earlier
{
    private readonly History? history;
    private readonly List<Question> asked;

    internal Earlier(History history)
    {
        this.history = history;
        asked = [];
    }

    private Earlier(List<Question> asked) => this.asked = asked;

    /// <summary>What was asked for.</summary>
    internal Asks Asked { get; private set; }

    /// <summary>True when nothing was asked.</summary>
    internal bool IsEmpty => asked.Count == 0;

    /// <summary>Up to <paramref name="count"/> comparable readings before this one, the latest first.</summary>
    public IReadOnlyList<NoteReading> Before(NoteReading reading, int count) => Ask(AsksOf.Readings(reading.What), (h, moved) => new Answer<NoteReading>(h.Before(moved == 0 ? reading : reading with { Line = reading.Line + moved }, count))).Values;

    /// <summary>Where a lump was first noted; null when nowhere.</summary>
    public NotedLump? FirstLump(string site, string? tag) => Ask(Asks.Lumps, (h, _) => h.FirstLump(site, tag));

    /// <summary>The seizure before the one in this line; null when there is none.</summary>
    public NotedSeizure? SeizureBefore(int line, int minute) => Ask(Asks.Seizures, (h, moved) => h.SeizureBefore(line + moved, minute));

    /// <summary>The last visit before a day at which a word was noted of a part; null when there is none.</summary>
    public NotedSign? SeenAtVisit(string part, string? site, string word, DateOnly before) => Ask(Asks.VisitSigns, (h, _) => h.SeenAtVisit(part, site, word, before));

    /// <summary>True when every question would be answered the same way.</summary>
    internal bool StillHolds(History now) => asked.TrueForAll(question => Equals(question.Put(now, question.Moved), question.Answer));

    /// <summary>The questions and answers alone, to be kept: the entries they were asked of are let go.</summary>
    internal Earlier Kept() => new(asked) { Asked = Asked };

    /// <summary>The same questions, asked from an entry that stands <paramref name="lines"/> further down now.</summary>
    internal Earlier Moved(int lines) => new([.. asked.Select(question => question with { Moved = question.Moved + lines })]) { Asked = Asked };

    private T Ask<T>(Asks kind, Func<History, int, T> question)
    {
        Asked |= kind;
        T answer = question(history!, 0);
        asked.Add(new Question((now, moved) => question(now, moved), answer, 0));
        return answer;
    }

    /// <param name="Put">Asks, from so many lines further down.</param>
    /// <param name="Answer">What the findings rest on.</param>
    /// <param name="Moved">How many lines further down the entry stands by now.</param>
    private sealed record Question(Func<History, int, object?> Put, object? Answer, int Moved);

    /// <summary>Several values that are equal when each is.</summary>
    private sealed record Answer<T>(IReadOnlyList<T> Values)
    {
        public bool Equals(Answer<T>? other) => other is not null && Values.SequenceEqual(other.Values);

        public override int GetHashCode() => Values.Count;
    }
}
