using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Checks;

/// <summary>What a full check holds, and what one lacks.</summary>
public class CheckItemsTests
{
    private static string[] Missing(string text)
    {
        Document document = Cursor.Note(text);
        return [.. CheckItems.Missing(document, document.Note.Entries[^1]).Select(item => item.Word.Word)];
    }

    [Fact]
    public void Every_row_has_a_source_and_a_word_that_a_check_may_hold()
    {
        foreach (CheckItem item in CheckItems.For(Species.Dog, null, onInsulin: true).Concat(CheckItems.For(Species.Cat, null, onInsulin: true)))
        {
            Assert.NotEmpty(item.Source);
            Assert.True(item.Word.Kind is WordKind.Vital or WordKind.Exam, item.Word.Word);
        }
    }

    [Fact]
    public void Glucose_is_asked_only_of_a_pet_on_insulin()
    {
        Assert.DoesNotContain("glucose", CheckItems.For(Species.Cat, true).Select(item => item.Word.Word));
        Assert.Contains("glucose", CheckItems.For(Species.Cat, true, onInsulin: true).Select(item => item.Word.Word));
    }

    [Fact]
    public void The_rest_that_is_ok_is_the_parts_and_never_a_measurement()
    {
        string[] missing = Missing("species dog\n2026-11-20 check\n  hr 18/15s\n  else ok");
        Assert.Contains("rr", missing);
        Assert.DoesNotContain("hr", missing);
        Assert.DoesNotContain("gums", missing);
    }

    [Fact]
    public void What_was_skipped_or_is_half_typed_is_named()
    {
        string[] missing = Missing("species dog\n2026-11-20 check\n  skip anus refused\n  temp");
        Assert.DoesNotContain("anus", missing);
        Assert.DoesNotContain("temp", missing);
        Assert.Contains("gums", missing);
    }

    [Fact]
    public void A_check_in_two_parts_of_one_day_is_one_check() =>
        Assert.DoesNotContain("gums", Missing("species dog\n2026-11-20 08:00 check\n  gums pink\n2026-11-20 18:00 check\n  eye both clear"));
}
