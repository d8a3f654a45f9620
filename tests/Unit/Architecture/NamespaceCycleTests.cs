using System.Text.RegularExpressions;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Architecture;

/// <summary>Inside a project as between projects, what is below knows nothing of what is above it.</summary>
public partial class NamespaceCycleTests
{
    [Theory]
    [InlineData("grammar")]
    [InlineData("server/Record")]
    [InlineData("server/Rendering")]
    [InlineData("server/Analysis")]
    [InlineData("server/Files")]
    [InlineData("server/Features")]
    [InlineData("server/Export")]
    [InlineData("server/LanguageServer")]
    [InlineData("server/LanguageHost")]
    [InlineData("server/Cli")]
    public void No_namespace_comes_back_to_itself(string project) => Assert.Empty(Cycles(Sources(project)));

    [Fact]
    public void A_cycle_is_found_by_usings_and_through_what_stands_around() => Assert.Equal(["A", "A.B"], Cycles(
    [
        "using A.B;\nnamespace A;\npublic sealed class Upper(Lower lower);\n",
        "namespace A.B;\npublic sealed class Lower { Upper? upper; }\n",
        "using A;\nnamespace C;\npublic sealed class Alone { Upper? upper; }\n",
    ]));

    /// <summary>The namespaces from which a way leads back to them.</summary>
    private static IEnumerable<string> Cycles(string[] sources)
    {
        (string Namespace, HashSet<string> Usings, HashSet<string> Words, string[] Types)[] files = [.. sources.Select(Read).Where(file => file.Namespace.Length > 0)];
        ILookup<string, string> homes = files.SelectMany(file => file.Types.Select(type => (type, file.Namespace))).Distinct().ToLookup(pair => pair.type, pair => pair.Namespace);
        ILookup<string, string> uses = (
            from file in files
            from word in file.Words
            from home in homes[word]
            where home != file.Namespace && (file.Usings.Contains(home) || file.Namespace.StartsWith(home + ".", StringComparison.Ordinal))
            select (file.Namespace, home)).Distinct().ToLookup(pair => pair.Namespace, pair => pair.home);
        return files.Select(file => file.Namespace).Distinct().Where(start => Reached(start, uses).Contains(start)).Order(StringComparer.Ordinal);
    }

    private static HashSet<string> Reached(string start, ILookup<string, string> uses)
    {
        var reached = new HashSet<string>();
        var next = new Stack<string>([start]);
        while (next.TryPop(out string? from))
        {
            foreach (string to in uses[from].Where(reached.Add))
            {
                next.Push(to);
            }
        }

        return reached;
    }

    private static (string Namespace, HashSet<string> Usings, HashSet<string> Words, string[] Types) Read(string source)
    {
        string code = Comment.Replace(source, "");
        return (
            Home.Match(code).Groups[1].Value,
            [.. Using.Matches(code).Select(match => match.Groups[1].Value)],
            [.. Word.Matches(Using.Replace(code, "")).Select(match => match.Value)],
            [.. Type.Matches(code).Select(match => match.Groups[1].Value)]);
    }

    private static string[] Sources(string project) => [.. Directory.EnumerateFiles(Repository.PathOf(project), "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal)).Select(File.ReadAllText)];

    [GeneratedRegex(@"//.*")]
    private static partial Regex Comment { get; }

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Home { get; }

    [GeneratedRegex(@"^using (?:static )?([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Using { get; }

    [GeneratedRegex(@"^(?:public|internal)(?: \w+)*? (?:class|record struct|record|struct|enum|interface) (\w+)", RegexOptions.Multiline)]
    private static partial Regex Type { get; }

    [GeneratedRegex(@"(?<!\.)\b[A-Z]\w*")]
    private static partial Regex Word { get; }
}
