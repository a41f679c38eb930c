using System.Text;

namespace Tautline.Formats.Import;

/// <summary>Turns a byte offset of UTF-8 text into a line and a column.</summary>
internal sealed class TextPlaces(ReadOnlyMemory<byte> text)
{
    private List<int>? _lineStarts;

    /// <summary>Line and column, both from 1; the column counts characters, a character beyond the basic plane as one.</summary>
    public (int Line, int Column) Of(int offset)
    {
        var starts = _lineStarts ??= FindLineStarts();
        var found = starts.BinarySearch(offset);
        var line = found >= 0 ? found : ~found - 1;
        return (line + 1, Characters(text.Span[starts[line]..Math.Min(offset, text.Length)]) + 1);
    }

    private static int Characters(ReadOnlySpan<byte> utf8)
    {
        var count = 0;
        while (!utf8.IsEmpty)
        {
            Rune.DecodeFromUtf8(utf8, out _, out var length);
            utf8 = utf8[length..];
            count++;
        }

        return count;
    }

    // Lines end with LF, CR LF or a lone CR.
    private List<int> FindLineStarts()
    {
        List<int> starts = [0];
        var span = text.Span;
        for (var i = 0; i < span.Length; i++)
        {
            if (span[i] == '\n' || (span[i] == '\r' && (i + 1 == span.Length || span[i + 1] != '\n'))) starts.Add(i + 1);
        }

        return starts;
    }
}
