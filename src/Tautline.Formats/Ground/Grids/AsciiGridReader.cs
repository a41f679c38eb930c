using System.Globalization;
using System.Text;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Grids;

/// <summary>Reads an Esri ASCII grid (Esri ASCII raster format) as it streams by; what is held is four bytes for each height that is kept.</summary>
internal sealed class AsciiGridReader
{
    private const int OfAKind = 20;
    private const float CustomNoData = -9999;

    private readonly GroundOptions _options;
    private readonly ProblemList _problems;
    private readonly byte[] _scratch = new byte[256];
    private GroundExtent? _extent;
    private long _customary;
    private long _points;
    private long _commas;

    private AsciiGridReader(GroundOptions options) => (_options, _problems) = (options, new(options.SourceName, null, OfAKind));

    public static GroundReading Read(ByteSource source, GroundOptions options)
    {
        var reader = new AsciiGridReader(options);
        using var stream = source.Open();
        var content = reader.Content(stream, source);
        return new() { Format = GroundFormat.AsciiGrid, Content = content, Extent = reader._extent, Problems = reader._problems.ToImmutable() };
    }

    private GridContent? Content(Stream stream, ByteSource source)
    {
        if (IsUtf16(source)) return Refuse(AsciiGridFindings.Utf16);
        if (source.Read(0, _scratch.AsSpan(0, 3)) == 3 && _scratch is [0xEF, 0xBB, 0xBF, ..]) stream.ReadExactly(_scratch, 0, 3);
        var tokens = new GridTokens(stream);
        var header = new AsciiGridHeader(_problems);
        if (header.Read(tokens) is not { } shape || PartOf(shape) is not { } part) return null;
        // A height and the blank behind it are two bytes at least; memory is not taken on the word of a header.
        var room = source.Length / 2 + 1;
        if ((long)shape.Rows * shape.Columns > room) return Refuse(AsciiGridFindings.NoRoom((long)shape.Rows * shape.Columns, room));
        var builder = new GridBuilder(shape, part, wide: false);
        ReadHeights(tokens, shape, builder, (float?)(_options.NoData ?? header.NoData));
        TellWriting();
        if (_problems.HasErrors) return null;
        return builder.Valid == 0 ? Refuse(GridFindings.NoHeights) : Built(builder);
    }

    private GridContent Built(GridBuilder builder)
    {
        var content = builder.Build();
        _problems.Add(GridFindings.Grid(content));
        return content;
    }

    private GridPart? PartOf(GridShape shape)
    {
        if (shape.IsSound) _extent = shape.Extent;
        if (GridChecks.Wrong(shape, _options) is not { } wrong) return GridPart.Of(shape, _options.Window);
        _problems.Add(wrong);
        return null;
    }

    private void ReadHeights(GridTokens tokens, GridShape shape, GridBuilder builder, float? noData)
    {
        var want = (long)shape.Rows * shape.Columns;
        var (found, extraLine, lastLine) = (0L, 0, tokens.Line);
        // The first height was met behind the header.
        for (var more = tokens.Word.Length > 0; more; more = tokens.Next())
        {
            lastLine = tokens.Line;
            if (found == want) extraLine = tokens.Line;
            if (found < want) Take(tokens, builder, noData, (int)(found / shape.Columns), (int)(found % shape.Columns));
            found++;
        }
        if (found < want) _problems.AddAtLine(AsciiGridFindings.TooFewValues(found, want), lastLine);
        if (found > want) _problems.AddAtLine(AsciiGridFindings.TooManyValues(found, want), extraLine);
    }

    private void Take(GridTokens tokens, GridBuilder builder, float? noData, int row, int column)
    {
        if (Number(tokens.Word) is not { } height) _problems.AddAtLine(AsciiGridFindings.NotANumber(Encoding.Latin1.GetString(tokens.Word)), tokens.Line);
        // The mark is compared as it is stored, since both were rounded alike.
        else if (height == noData) return;
        else if (noData is null && height == CustomNoData) _customary++;
        else builder.Set(row, column, height);
    }

    /// <summary>The number of a word; NaN for the ways of writing that there is none, null where it is no number.</summary>
    private float? Number(ReadOnlySpan<byte> word)
    {
        if (float.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
        {
            if (word.Contains((byte)'.')) _points++;
            return number;
        }
        return NumberOtherwise(word);
    }

    private float? NumberOtherwise(ReadOnlySpan<byte> word)
    {
        if (word.Contains((byte)'#') || Ascii.EqualsIgnoreCase(word.TrimStart("+-"u8), "inf"u8)) return float.NaN;
        var comma = word.IndexOf((byte)',');
        var text = _scratch.AsSpan(0, word.Length);
        word.CopyTo(text);
        if (comma >= 0 && !word.Contains((byte)'.')) text[comma] = (byte)'.';
        if (text.IndexOfAny((byte)'D', (byte)'d') is var exponent and > 0) text[exponent] = (byte)'E';
        if (!float.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)) return null;
        if (comma >= 0) _commas++;
        return number;
    }

    private void TellWriting()
    {
        if (_customary > 0) _problems.Add(AsciiGridFindings.NoDataTaken(_customary));
        if (_commas > 0) _problems.Add(_points > 0 ? AsciiGridFindings.MixedDecimals : AsciiGridFindings.DecimalCommas);
    }

    private bool IsUtf16(ByteSource source)
    {
        var start = _scratch.AsSpan(0, 2);
        return source.Read(0, start) == 2 && (start is [0xFF, 0xFE] or [0xFE, 0xFF] || start.Contains((byte)0));
    }

    private GridContent? Refuse(Finding finding)
    {
        _problems.Add(finding);
        return null;
    }
}
