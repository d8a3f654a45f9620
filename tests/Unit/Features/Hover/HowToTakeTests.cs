using HealthNotes.Record.Checks;

namespace HealthNotes.Tests.Features.Hover;

/// <summary>The table of how readings are taken.</summary>
public class HowToTakeTests
{
    private static readonly string[] Asked =
        ["hr", "rr", "temp", "crt", "weight", "bcs", "mcs", "pain", "glucose", "gums", "node", "joint", "gland", "belly", "mouth", "ear", "eye", "lump", "wound"];

    [Fact]
    public void Whatever_a_check_holds_has_its_row()
    {
        foreach (string word in Asked.Concat(CheckItems.For(onInsulin: true).Select(item => item.Word.Word)))
        {
            HowToTake? how = HowToTake.Of(word);
            Assert.True(how is not null, word);
            Assert.True(how.Source.Length > 0 && how.Steps.EndsWith('.') && how.Caution?.EndsWith('.') != false, word);
            Assert.InRange(how.Steps.Split(['.', '?'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Count(part => part.Contains(' ', StringComparison.Ordinal)), 1, 4);
        }

        Assert.Null(HowToTake.Of("pet"));
    }

    [Fact]
    public void Breathing_is_counted_without_touching() => Assert.False(HowToTake.Of("rr")!.Touch);
}
