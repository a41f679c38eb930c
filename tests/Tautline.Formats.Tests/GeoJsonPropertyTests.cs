using System.Globalization;
using System.Text;
using CsCheck;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests;

public sealed class GeoJsonPropertyTests
{
    private const string Sample =
        """
        {"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:4326"}},"features":[
        {"type":"Feature","id":"é1","properties":{"name":"Yard ✓","n":[1,{"a":null}]},"geometry":{"type":"Polygon","coordinates":
        [[[6.1,45.2,3],[6.101,45.2,3.5],[6.101,45.201],[6.1,45.2,3]]]}},
        {"type":"Feature","properties":null,"geometry":{"type":"GeometryCollection","geometries":[
        {"type":"MultiLineString","coordinates":[[[6.1,45],[6.2,45]],[[6.1,45],[6.1,45.1]]]}]}}]}
        """;

    private static readonly int[] Codes = [0, 4326, 4269, 2992, 2239, 32632, 32701, 3857, -1];
    private static readonly Gen<int> SystemCode = Gen.Int[0, Codes.Length - 1].Select(i => Codes[i]);
    private static readonly byte[] SampleBytes = Encoding.UTF8.GetBytes(Sample);

    [Fact]
    public void EveryCutOfASoundFileGivesNoLineAndOneError()
    {
        Assert.Equal(3, GeoJsonReader.Read(SampleBytes).Lines.Length);
        for (var length = 1; length < SampleBytes.Length; length++)
        {
            var result = GeoJsonReader.Read(SampleBytes.AsMemory(0, length));

            Assert.Empty(result.Lines);
            Assert.Contains(Assert.Single(result.Problems).Code, (string[])["CutOff", "NotUtf8"]);
        }
    }

    [Fact]
    public void AnyBytesInAnyPlaceNeverThrow() =>
        Gen.Select(Gen.Int[0, SampleBytes.Length - 1], Gen.Byte.Array[0, 8], Gen.Int[0, 12], SystemCode)
            .Always((at, bytes, drop, code) => IsWhole(GeoJsonReader.Read(Mutate(at, bytes, drop), Options(code))), iter: 20_000);

    [Fact]
    public void AnyNumbersNeverThrow() =>
        Gen.Select(Gen.Double.Array[2, 3].Array[0, 5], SystemCode)
            .Always((positions, code) => IsWhole(GeoJsonReader.Read(Line(positions), Options(code))), iter: 20_000);

    [Fact]
    public void AGroundSquareAnywhereHasTheLengthOfItsSidesOnTheEllipsoid() =>
        Gen.Select(Gen.Double[-79, 83], Gen.Double[-180, 180]).Always((latitude, longitude) =>
        {
            // Short sides by the radii of curvature of WGS 84, apart from any projection: e2 = 0.00669437999014
            const double Step = 0.001, E2 = 0.00669437999014, A = 6378137;
            var middle = double.DegreesToRadians(latitude + Step / 2);
            var w = 1 - E2 * Math.Sin(middle) * Math.Sin(middle);
            var meridian = A * (1 - E2) / Math.Pow(w, 1.5) * double.DegreesToRadians(Step);
            var parallel = A / Math.Sqrt(w) * Math.Cos(middle) * double.DegreesToRadians(Step);

            var result = GeoJsonReader.Read(Line([
                [longitude, latitude], [longitude + Step, latitude], [longitude + Step, latitude + Step], [longitude, latitude + Step], [longitude, latitude]]));

            if (longitude + Step > 180) return result.HasErrors;
            // The north and south sides differ from the middle one in opposite ways; what is left is below 1e-6, and
            // the one factor adds up to 0.2 millionths within 100 m.
            return Math.Abs(result.Lines[0].Length() / (2 * (meridian + parallel)) - 1) < 1e-6;
        }, iter: 2_000);

    private static bool IsWhole(ImportResult result) =>
        (result.Lines.IsEmpty ? result.HasErrors : result.Origin is not null && result.System is not null)
        && result.Lines.All(l => l.Points.Length >= (l.Closed ? 3 : 2) && double.IsFinite(l.Length()));

    private static byte[] Mutate(int at, byte[] bytes, int drop) =>
        [.. SampleBytes[..at], .. bytes, .. SampleBytes[Math.Min(at + drop, SampleBytes.Length)..]];

    private static ImportOptions Options(int code) => new()
    {
        CoordinateSystem = code switch { 0 => null, -1 => GeoJsonText.LocalMetres, _ => Coordinates.CoordinateSystemChoice.Epsg(code) },
    };

    private static byte[] Line(double[][] positions)
    {
        var text = string.Join(',', positions.Select(p => $"[{string.Join(',', p.Select(v => v.ToString("R", CultureInfo.InvariantCulture)))}]"));
        return Encoding.UTF8.GetBytes($$"""{"type":"LineString","coordinates":[{{text}}]}""");
    }
}
