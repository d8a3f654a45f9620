using CsCheck;
using HealthNotes.Features.Tokens;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Tokens;

public class TokenDeltaTests
{
    private static readonly Gen<int[]> Encoded = Gen.Int[0, 1].Array[5].Array[0, 6].Select(tokens => tokens.SelectMany(token => token).ToArray());

    [Fact]
    public void A_change_in_the_middle_is_one_edit_of_whole_tokens()
    {
        TokenEdit? edit = TokenDelta.Between([0, 0, 3, 1, 0, 1, 2, 4, 1, 0, 1, 2, 5, 2, 0], [0, 0, 3, 1, 0, 1, 2, 9, 1, 0, 1, 2, 5, 2, 0]);
        Assert.NotNull(edit);
        Assert.Equal((5, 5), (edit.Start, edit.DeleteCount));
        Assert.Equal([1, 2, 9, 1, 0], edit.Data.AsEnumerable());
    }

    [Fact]
    public void Nothing_changed_is_no_edit()
    {
        Assert.Null(TokenDelta.Between([1, 2, 3, 4, 5], [1, 2, 3, 4, 5]));
        Assert.Null(TokenDelta.Between([], []));
    }

    [Fact]
    public void The_edit_turns_the_old_into_the_new() => Gen.Select(Encoded, Encoded).ForAll((old, now) =>
    {
        TokenEdit? edit = TokenDelta.Between(old, now);
        Assert.Equal(edit is null, old.SequenceEqual(now));
        if (edit is not null)
        {
            int[] edited = [.. old[..edit.Start], .. edit.Data, .. old[(edit.Start + edit.DeleteCount)..]];
            Assert.Equal(now, edited);
            Assert.Equal((0, 0, 0), (edit.Start % 5, edit.DeleteCount % 5, edit.Data.Length % 5));
            if (edit.DeleteCount > 0 && edit.Data.Length > 0)
            {
                Assert.NotEqual(old[edit.Start..(edit.Start + 5)], edit.Data.Take(5));
            }
        }
    }, iter: Effort.Times(2_000));
}
