using HealthNotes.Features.Completion;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Where nothing is offered.</summary>
public class CompletionPlaceTests
{
    [Theory]
    [InlineData("# a comm|ent")]
    [InlineData("pet Marlow # the d|og")]
    [InlineData("2026-10-04\n  > he sha|")]
    public void Free_words_and_comments_are_the_writers_own(string marked)
    {
        Cursor at = Cursor.In(marked);
        Assert.Empty(CompletionFeature.At(at.Document, at.Place, FeatureSettings.Default).Items);
    }
}
