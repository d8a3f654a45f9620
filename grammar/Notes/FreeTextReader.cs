using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Grammar.Notes;

/// <summary>Puts consecutive free-text lines together, and decides what they belong to.</summary>
internal sealed class FreeTextReader
{
    private readonly StringBuilder text = new();
    private ImmutableArray<FreeTextBlock>.Builder? blocks;
    private int first = -1;
    private int? belongsTo;
    private (int Index, int Indent)? above;

    public void Take(int index, LineSyntax line)
    {
        if (line.Kind != LineKind.FreeText)
        {
            EndBlock();
            above = line.Kind switch
            {
                LineKind.Item => (index, line.Indent),
                LineKind.Comment => above,
                _ => null,
            };
            return;
        }

        if (first < 0)
        {
            first = index;
            belongsTo = above is { } item && line.Indent > item.Indent ? item.Index : null;
        }
        else
        {
            text.Append('\n');
        }

        text.Append(line.FreeText);
    }

    public ImmutableArray<FreeTextBlock> Close()
    {
        EndBlock();
        above = null;
        return blocks?.DrainToImmutable() ?? [];
    }

    private void EndBlock()
    {
        if (first >= 0)
        {
            (blocks ??= ImmutableArray.CreateBuilder<FreeTextBlock>()).Add(new FreeTextBlock(first, text.ToString(), belongsTo));
            text.Clear();
            first = -1;
        }
    }
}
