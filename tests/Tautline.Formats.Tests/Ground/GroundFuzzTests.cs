using System.Text;
using CsCheck;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Cut and damaged files of every format: whatever the bytes, a reader gives ground or says why not, and placing what it gives does not throw.</summary>
public sealed class GroundFuzzTests
{
    private static readonly GroundOptions Options = new()
    {
        HeightUnit = LinearUnit.Metre,
        Points = new() { PlaceHolders = PlaceHolders.LeaveOut, Breaklines = new(["EP"]) { BeginEnd = true } },
        Limits = new() { Cells = 20_000, Points = 1000 },
    };

    private static readonly (byte[] Bytes, GroundFormat Format)[] Samples =
    [
        .. new[] { "f32-strips", "f64-deflate-p3", "f32-lzw-p3-tiles", "f32-deflate-tiles-big", "f32-packbits", "i16-lzw-p2", "i32-deflate-p2-be", "navd88-ftus", "scaled", "turned", "sparse" }
            .Select(n => (GdalFile.Read(n), GroundFormat.GeoTiff)),
        Text("ncols 4\nnrows 3\nxllcorner 500000\nyllcorner 4400000\ncellsize 2\nNODATA_value -9999\n1 2.5 3 4\n5,5 6 -9999 8\n9 1e1 11 12\n", GroundFormat.AsciiGrid),
        Text("Job 7\n# x\nP,N,E,Z,D\n1,5000.5,1000.25,98.4,EP B\n2,5001,1001,98.5,EP\n3,5002,1000,98.6,\"EP, 6\"\" E\"\n4,1,1,1,x\n5,1,1,1,x\n6,1,1,1,x\n7,5000,1005,98.9,GS\n", GroundFormat.SurveyPoints),
        Text(
            "<?xml version=\"1.0\"?><LandXML xmlns=\"http://www.landxml.org/schema/LandXML-1.2\"><Units><Metric linearUnit=\"meter\" areaUnit=\"squareMeter\"/></Units>" +
            "<Surfaces><Surface name=\"A\"><SourceData><Boundaries><Boundary bndType=\"void\"><PntList3D>1 1 0 1 2 0 2 2 0</PntList3D></Boundary></Boundaries></SourceData>" +
            "<Definition surfType=\"TIN\" area2DSurf=\"1200\"><Pnts><P id=\"1\">0 0 10</P><P id=\"2\">0 30 20</P><P id=\"7\">40 0 10</P><P id=\"9\">40 30 20</P></Pnts>" +
            "<Faces><F>1 2 7</F><F>2 9 7</F></Faces></Definition></Surface></Surfaces></LandXML>", GroundFormat.LandXml),
    ];

    [Fact]
    public void EverySampleIsSoundBeforeItIsDamaged() => Assert.All(Samples, s => Assert.NotNull(GroundReader.Read(s.Bytes, Options with { Format = s.Format }).Format));

    [Fact]
    public void EveryCutOfASurfaceGivesNoGroundAndAReason()
    {
        foreach (var (bytes, format) in Samples.Where(s => s.Format == GroundFormat.LandXml))
            for (var length = 1; length < bytes.Length; length++)
                Assert.True(GroundReader.Read(bytes.AsMemory(0, length), Options with { Format = format }) is { HasErrors: true, Content: null }, $"{length} of {bytes.Length} bytes");
    }

    [Fact]
    public void EveryCutOfARasterGivesAllOfItsGroundOrNoneAndAReason()
    {
        foreach (var (bytes, format) in Samples.Where(s => s.Format == GroundFormat.GeoTiff))
        {
            var whole = GroundReader.Read(bytes, Options).Content as GridContent;
            for (var length = 1; length < bytes.Length; length++)
            {
                var file = GroundReader.Read(bytes.AsMemory(0, length), Options with { Format = format });
                Holds(file);
                // The checksum at the end of a DEFLATE block may be missing without loss.
                if (file.Content is GridContent grid) Assert.Equal((whole!.Valid, whole.Mean, whole.Extent), (grid.Valid, grid.Mean, grid.Extent));
                else Assert.True(file.HasErrors);
            }
        }
    }

    [Fact]
    public void EveryCutOfATextGivesItsPointsOrAReason()
    {
        foreach (var (bytes, format) in Samples.Where(s => s.Format is GroundFormat.SurveyPoints or GroundFormat.AsciiGrid))
            for (var length = 1; length < bytes.Length; length++) Holds(GroundReader.Read(bytes.AsMemory(0, length), Options with { Format = format }));
    }

    [Fact]
    public void AnyBitsAndBytesInAnyPlaceNeverThrow() =>
        Gen.Select(Gen.Int[0, Samples.Length - 1], Gen.Int[0, 4000], Gen.Byte.Array[0, 6], Gen.Int[0, 6], Gen.Int[0, 31].Array[0, 3])
            .Always(
                (sample, at, bytes, drop, bits) =>
                {
                    var (sound, format) = Samples[sample];
                    Holds(GroundReader.Read(Damaged(sound, at % sound.Length, bytes, drop, bits), Options with { Format = format }));
                },
                iter: 8_000);

    /// <summary>Found by the test above: a broken zlib header is told by another exception than broken deflate data is.</summary>
    [Fact]
    public void ABlockWhoseHeaderIsBrokenIsToldLikeOneWhoseDataIs()
    {
        var (sound, format) = Samples[3];
        var read = GroundReader.Read(Damaged(sound, 1339 % sound.Length, [249, 92, 64, 242], 1, []), Options with { Format = format });
        Assert.True(read.HasErrors);
        Holds(read);
    }

    [Fact]
    public void AnyBytesUnderAnyFormatNeverThrow() =>
        Gen.Select(Gen.Byte.Array[0, 200], Gen.Int[0, 4]).Always(
            (bytes, format) => Holds(GroundReader.Read(bytes, format == 4 ? Options : Options with { Format = (GroundFormat)format })), iter: 8_000);

    [Fact]
    public void AnyTextOfNumbersAndSeparatorsNeverThrows() =>
        Gen.Int[0, 15].Array[0, 120].Always(
            letters => Holds(GroundReader.Read(Encoding.ASCII.GetBytes(string.Concat(letters.Select(l => "0123,.;\t \n\"-eNE#"[l]))), Options)), iter: 8_000);

    /// <summary>Nothing is both without ground and without a word; ground that is given can be placed and asked.</summary>
    private static void Holds(GroundFile file)
    {
        Assert.True(file.Content is not null || file.HasErrors || !file.Questions.IsEmpty, "no ground, and no reason");
        Assert.All(file.Problems, p => Assert.False(string.IsNullOrWhiteSpace(p.Message)));
        var settled = file.Answered(GroundText.LocalMetres, LinearUnit.Metre);
        if (!settled.IsReady || settled.Extent is not { } box) return;
        var placed = GroundPlacement.Place(settled, GroundTarget.Local);
        Assert.True(placed.Surface is not null || placed.HasErrors, "no surface, and no reason");
        if (placed.Surface is null || !(Math.Abs(box.West) < 1e8 && Math.Abs(box.North) < 1e8)) return;
        var height = placed.Surface.HeightAt((box.West + box.East) / 2, (box.South + box.North) / 2);
        Assert.True(height is null || double.IsFinite(height.Value));
    }

    private static byte[] Damaged(byte[] sound, int at, byte[] bytes, int drop, int[] bits)
    {
        byte[] damaged = [.. sound[..at], .. bytes, .. sound[Math.Min(at + drop, sound.Length)..]];
        foreach (var bit in bits)
            if (at + bit / 8 < damaged.Length) damaged[at + bit / 8] ^= (byte)(1 << (bit % 8));
        return damaged;
    }

    private static (byte[], GroundFormat) Text(string text, GroundFormat format) => (Encoding.UTF8.GetBytes(text), format);
}
