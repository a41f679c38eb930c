using BitMiracle.LibTiff.Classic;
using Tautline.Formats.Ground;
using static Tautline.Formats.Tests.Ground.GroundText;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Every way of writing a grid, against the figures of the script that wrote it with GDAL, and against LibTiff's decoding.</summary>
public sealed class GeoTiffEncodingTests
{
    [Theory]
    [InlineData("f32-strips")]
    [InlineData("f64-strips")]
    [InlineData("f32-lzw-p3-tiles")]
    [InlineData("f64-deflate-p3")]
    [InlineData("f32-deflate-tiles-big")]
    [InlineData("f32-bigendian")]
    [InlineData("f32-packbits")]
    [InlineData("f32-nan")]
    [InlineData("f32-two-bands")]
    [InlineData("f32-two-bands-apart")]
    [InlineData("scaled")]
    public void FloatsAreReadHoweverTheyAreWritten(string name)
    {
        var grid = GroundReader.Read(GdalFile.Read(name)).Grid();

        Assert.Equal((11, 9, 97), (grid.Rows, grid.Columns, grid.Valid));
        Assert.Equal(20755.75, grid.Mean * 97, 1e-9);
        Assert.Equal((200.5, 227.25), (grid.Lowest, grid.Highest));
        Assert.Equal((null, null), (grid.HeightOf(3, 4), grid.HeightOf(0, 0)));
        Assert.Equal((227.25, 213.0, 203.0, 209.5), (grid.HeightOf(10, 8), grid.HeightOf(5, 2), grid.HeightOf(1, 1), grid.HeightOf(3, 5)));
        Assert.Equal((500000.0, 4400022.0, 2.0, 2.0), (grid.West, grid.North, grid.CellEast, grid.CellNorth));
    }

    [Theory]
    [InlineData("i16-lzw-p2")]
    [InlineData("i32-deflate-p2-be")]
    [InlineData("u16-p2-tiles")]
    [InlineData("u8")]
    public void WholeNumbersAreReadHoweverTheyAreWritten(string name)
    {
        var grid = GroundReader.Read(GdalFile.Read(name)).Grid();

        Assert.Equal(97, grid.Valid);
        Assert.Equal(20756, grid.Mean * 97, 1e-9);
        Assert.Null(grid.HeightOf(3, 4));
        Assert.Equal((227, 213), (grid.HeightOf(10, 8), grid.HeightOf(5, 2)));
    }

    [Theory]
    [InlineData("f32-strips")]
    [InlineData("f64-strips")]
    [InlineData("f32-lzw-p3-tiles")]
    [InlineData("f64-deflate-p3")]
    [InlineData("f32-deflate-tiles-big")]
    [InlineData("f32-bigendian")]
    [InlineData("f32-packbits")]
    [InlineData("i16-lzw-p2")]
    [InlineData("i32-deflate-p2-be")]
    [InlineData("u16-p2-tiles")]
    [InlineData("u8")]
    public void EveryCellOfAWrittenGridIsThatOfLibTiff(string name) => AgreesWithLibTiff(GdalFile.Read(name), name is "u8" or "u16-p2-tiles" ? 0 : -9999);

    [Theory]
    [InlineData(Indiana, -9999)]
    [InlineData(IndianaFeet, -9999)]
    [InlineData(Vermont, -32768)]
    public void EveryCellOfARealGridIsThatOfLibTiff(string path, double noData) => AgreesWithLibTiff(SharedData.Read(path), noData);

    [Fact]
    public void BlocksThatAreLeftOutAreWithoutGround()
    {
        var file = GroundReader.Read(GdalFile.Read("sparse"));

        Assert.Equal((27, 25, 97), (file.Grid().Rows, file.Grid().Columns, file.Grid().Valid));
        Assert.Equal("3 strips or tiles are left out of the file; there is no ground in them.", file.Problem("BlocksMissing").Message);
    }

    [Fact]
    public void SecondBandsAndScalesAreTold()
    {
        Assert.Contains("2 bands", GroundReader.Read(GdalFile.Read("f32-two-bands")).Problem("BandsLeftOut").Message);
        Assert.Contains("multiplied by 0.25 and 200 added", GroundReader.Read(GdalFile.Read("scaled")).Problem("Scaled").Message);
    }

    [Theory]
    [InlineData("f32-lzw-p3-tiles", 0, 0)]
    [InlineData("f32-strips", 5, 3)]
    [InlineData("f64-deflate-p3", 8, 7)]
    [InlineData("f32-two-bands-apart", 9, 1)]
    public void AWindowHasTheCellsOfTheWhole(string name, int row, int column)
    {
        var whole = GroundReader.Read(GdalFile.Read(name)).Grid();
        // The middle of one cell: from the cells beside it up to two come along.
        var (east, north) = (500000 + 2 * (column + 0.5), 4400022 - 2 * (row + 0.5));
        var part = GroundReader.Read(GdalFile.Read(name), new() { Window = new(east, north, east, north) }).Grid();

        Assert.InRange(part.Rows, 2, 4);
        Assert.InRange(part.Columns, 2, 4);
        Assert.Equal((11, 9), part.Whole);
        var (down, across) = ((int)((4400022 - part.North) / 2), (int)((part.West - 500000) / 2));
        for (var r = 0; r < part.Rows; r++)
            for (var c = 0; c < part.Columns; c++) Assert.Equal(whole.HeightOf(r + down, c + across), part.HeightOf(r, c));
    }

    private static void AgreesWithLibTiff(byte[] bytes, double noData)
    {
        var grid = GroundReader.Read(bytes).Grid();
        Tiff.SetErrorHandler(new Silent()); // it warns of every tag of GeoTIFF
        using var tiff = Tiff.ClientOpen("", "r", new MemoryStream(bytes), new TiffStream());
        var decoded = new LibTiffGrid(tiff);
        Assert.Equal((decoded.Rows, decoded.Columns), (grid.Rows, grid.Columns));
        for (var row = 0; row < grid.Rows; row++)
            for (var column = 0; column < grid.Columns; column++)
            {
                var value = decoded.At(row, column);
                Assert.Equal(value == noData ? null : value, grid.HeightOf(row, column));
            }
    }

    private sealed class Silent : TiffErrorHandler
    {
        public override void WarningHandler(Tiff tif, string method, string format, params object[] args) { }

        public override void WarningHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args) { }
    }

    /// <summary>All cells as LibTiff decodes them, in the machine's byte order.</summary>
    private sealed class LibTiffGrid
    {
        private readonly double[] _cells;

        public LibTiffGrid(Tiff tiff)
        {
            (Rows, Columns) = (Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.IMAGELENGTH), Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.IMAGEWIDTH));
            _cells = new double[Rows * Columns];
            var (bits, kind) = (Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.BITSPERSAMPLE), Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.SAMPLEFORMAT));
            var tiled = tiff.IsTiled();
            var (high, wide) = tiled
                ? (Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.TILELENGTH), Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.TILEWIDTH))
                : (Field(tiff, BitMiracle.LibTiff.Classic.TiffTag.ROWSPERSTRIP), Columns);
            var across = (Columns + wide - 1) / wide;
            for (var block = 0; block < across * ((Rows + high - 1) / high); block++)
            {
                var buffer = new byte[tiled ? tiff.TileSize() : tiff.StripSize()];
                var got = tiled ? tiff.ReadEncodedTile(block, buffer, 0, buffer.Length) : tiff.ReadEncodedStrip(block, buffer, 0, buffer.Length);
                for (var i = 0; i < got * 8 / bits; i++)
                {
                    var (row, column) = (block / across * high + i / wide, block % across * wide + i % wide);
                    if (row < Rows && column < Columns) _cells[row * Columns + column] = Number(buffer, i, bits, kind);
                }
            }
        }

        public int Rows { get; }

        public int Columns { get; }

        public double At(int row, int column) => _cells[row * Columns + column];

        private static int Field(Tiff tiff, BitMiracle.LibTiff.Classic.TiffTag tag) => tiff.GetFieldDefaulted(tag)[0].ToInt();

        private static double Number(byte[] bytes, int at, int bits, int kind) => (bits, kind) switch
        {
            (32, 3) => BitConverter.ToSingle(bytes, 4 * at),
            (64, 3) => BitConverter.ToDouble(bytes, 8 * at),
            (16, 2) => BitConverter.ToInt16(bytes, 2 * at),
            (32, 2) => BitConverter.ToInt32(bytes, 4 * at),
            (16, 1) => BitConverter.ToUInt16(bytes, 2 * at),
            _ => bytes[at],
        };
    }
}
