using Tautline.Formats.Ground.Grids;
using Tautline.Formats.Ground.Reading;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>Goes through the strips or tiles that a part of the raster touches.</summary>
internal sealed class RasterBlocks(ByteSource source, TiffLayout layout, GridPart part, SampleRule rule)
{
    private readonly RowSamples _samples = new(layout);
    private readonly byte[] _row = new byte[layout.RowBytes];

    /// <summary>Blocks the file leaves out.</summary>
    public int Missing { get; private set; }

    /// <summary>Reads all of them; the number of a block that is not whole, else null.</summary>
    public int? ReadInto(GridBuilder builder)
    {
        for (var down = part.Row / layout.BlockRows; down * (long)layout.BlockRows < part.EndRow; down++)
        {
            for (var across = part.Column / layout.BlockColumns; across * (long)layout.BlockColumns < part.EndColumn; across++)
                if (!ReadBlock(down, across, builder)) return down * layout.Across + across;
        }
        return null;
    }

    private bool ReadBlock(int down, int across, GridBuilder builder)
    {
        var number = down * layout.Across + across;
        var (offset, count) = (layout.Offsets[number], layout.ByteCounts[number]);
        if (offset == 0 && count == 0)
        {
            Missing++;
            return true;
        }
        using var bytes = BlockBytes.Open(source, offset, count, layout.Compression);
        var first = down * layout.BlockRows;
        var end = (int)Math.Min((long)first + layout.BlockRows, part.EndRow);
        for (var row = first; row < end; row++)
        {
            if (!bytes.Fill(_row)) return false;
            if (part.HoldsRow(row)) TakeRow(row, across * layout.BlockColumns, builder);
        }
        return true;
    }

    private void TakeRow(int row, int firstColumn, GridBuilder builder)
    {
        _samples.Undo(_row);
        var end = Math.Min(layout.BlockColumns, layout.Columns - firstColumn);
        for (var i = 0; i < end; i++) builder.Set(row, firstColumn + i, rule.Height(_samples.At(_row, i)));
    }
}
