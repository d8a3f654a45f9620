using System.Reflection;
using System.Text.RegularExpressions;
using HealthNotes.Analysis;
using HealthNotes.Export.Tables;
using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.Grammar.Notes;
using HealthNotes.LanguageServer.Session;
using HealthNotes.Record.Pet;
using HealthNotes.Rendering.Pages;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Architecture;

/// <summary>What each layer must not know. The lines in words are in DEVELOPERS.md.</summary>
public class LayerTests
{
    private static readonly string[] Outside = ["System.Console", "System.CommandLine", "System.Text.Json", "System.Net.Http", "System.Diagnostics.Process", "System.Text.RegularExpressions"];

    public static TheoryData<Type, string[], string[]> Layers => new()
    {
        // layer, the project's own assemblies it may use, libraries it may use
        { typeof(Note), [], ["Pidgin", "Quickenshtein"] },
        { typeof(PetProfile), ["HealthNotes.Grammar"], [] },
        { typeof(NoteAnalysis), ["HealthNotes.Grammar", "HealthNotes.Record"], ["MathNet.Numerics"] },
        { typeof(VisitPage), ["HealthNotes.Grammar", "HealthNotes.Record", "HealthNotes.Analysis"], ["Markdig", "SkiaSharp"] },
        { typeof(Document), ["HealthNotes.Grammar", "HealthNotes.Record", "HealthNotes.Analysis"], [] },
        { typeof(PhotoFolder), ["HealthNotes.Grammar", "HealthNotes.Rendering"], [] },
    };

    [Theory]
    [MemberData(nameof(Layers))]
    public void Dependencies_go_one_way(Type layer, string[] own, string[] libraries)
    {
        string[] references = [.. layer.Assembly.GetReferencedAssemblies().Select(name => name.Name!)];
        Assert.Empty(references.Where(name => name.StartsWith("HealthNotes", StringComparison.Ordinal)).Except(own));
        Assert.Empty(references.Where(name => !name.StartsWith("System", StringComparison.Ordinal) && !name.StartsWith("HealthNotes", StringComparison.Ordinal)).Except(libraries));
        Assert.Empty(references.Intersect(Outside));
    }

    /// <summary>The export writes open formats, some of which are JSON; it knows no protocol, no disk and no page.</summary>
    [Fact]
    public void The_export_knows_the_layers_below_and_the_form_of_what_it_writes()
    {
        string[] references = [.. typeof(ExportTable).Assembly.GetReferencedAssemblies().Select(name => name.Name!)];
        Assert.Empty(references.Where(name => name.StartsWith("HealthNotes", StringComparison.Ordinal)).Except(["HealthNotes.Grammar", "HealthNotes.Record", "HealthNotes.Analysis"]));
        Assert.DoesNotContain(references, name => !name.StartsWith("System", StringComparison.Ordinal) && !name.StartsWith("HealthNotes", StringComparison.Ordinal));
        Assert.Equal(["System.Text.Json"], references.Intersect(Outside));
    }

    /// <summary>The protocol is a coat over the features: it knows no command line, and its handlers know no JSON.</summary>
    [Fact]
    public void The_language_server_knows_the_layers_below_and_its_protocol()
    {
        string[] references = [.. typeof(Server).Assembly.GetReferencedAssemblies().Select(name => name.Name!)];
        Assert.Empty(references.Where(name => name.StartsWith("HealthNotes", StringComparison.Ordinal))
            .Except(["HealthNotes.Grammar", "HealthNotes.Record", "HealthNotes.Analysis", "HealthNotes.Rendering", "HealthNotes.Features", "HealthNotes.Files"]));
        Assert.DoesNotContain("System.CommandLine", references);
        // it runs in a browser too, which has neither
        Assert.Empty(references.Intersect(["System.Net.Http", "System.Net.Sockets", "System.IO.Pipes", "System.Diagnostics.Process"]));
        IEnumerable<string> handlers = Directory.EnumerateFiles(Repository.PathOf("server/LanguageServer/Handlers"), "*.cs", SearchOption.AllDirectories);
        Assert.Empty(handlers.Where(file => File.ReadAllText(file).Contains("Json", StringComparison.Ordinal)).Select(Path.GetFileName));
    }

    /// <summary>No clock, no disk, no terminal inside: the day and the text come from outside.</summary>
    [Theory]
    [InlineData("grammar")]
    [InlineData("server/Record")]
    [InlineData("server/Analysis")]
    [InlineData("server/Rendering")]
    [InlineData("server/Features")]
    [InlineData("server/Export")]
    public void The_inner_layers_are_pure(string folder)
    {
        var forbidden = new Regex(@"(?<![\w.])(DateTime(Offset)?\.(Now|UtcNow|Today)|File\.|Directory\.|Console\.|Environment\.|Random\b|Guid\.NewGuid)");
        IEnumerable<string> hits =
            from file in Directory.EnumerateFiles(Repository.PathOf(folder), "*.cs", SearchOption.AllDirectories)
            where !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal)
            from line in File.ReadLines(file)
            where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && forbidden.IsMatch(line)
            select $"{Path.GetFileName(file)}: {line.Trim()}";
        Assert.Empty(hits);
    }

    /// <summary>What prints to a terminal escapes what it prints, in one place; the server has its protocol's streams and its log.</summary>
    [Fact]
    public void One_place_knows_the_terminal() => Assert.Equal(
        ["ServerLog.cs", "Terminal.cs", "Transport.cs"],
        Directory.EnumerateFiles(Repository.PathOf("server"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && Regex.IsMatch(File.ReadAllText(file), @"\bConsole\."))
            .Select(Path.GetFileName).Order(StringComparer.Ordinal));

    /// <summary>The library folds and escapes; what a note says is cleaned where it becomes an event.</summary>
    [Fact]
    public void One_place_writes_a_calendar() => Assert.Equal(
        ["DueCalendar.cs"],
        Directory.EnumerateFiles(Repository.PathOf("server"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && Regex.IsMatch(File.ReadAllText(file), @"\bIcal\."))
            .Select(Path.GetFileName));

    /// <summary>Static state that can change would let one note's reading disturb another's.</summary>
    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Nothing_static_can_change(Assembly assembly) => Assert.Empty(
        from type in assembly.GetTypes()
        where !type.Name.StartsWith('<') && !(type.DeclaringType?.Name.StartsWith('<') ?? false)
        from field in type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)
        where !field.IsInitOnly && !field.IsLiteral && !field.Name.StartsWith('<')
        select $"{type.Name}.{field.Name}");

    public static TheoryData<Assembly> Assemblies => [typeof(Note).Assembly, typeof(PetProfile).Assembly, typeof(NoteAnalysis).Assembly, typeof(VisitPage).Assembly, typeof(Document).Assembly, typeof(ExportTable).Assembly];
}
