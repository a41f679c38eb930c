using System.Text;
using Tautline.Formats.Coordinates;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests;

/// <summary>Short ways to read a literal.</summary>
internal static class GeoJsonText
{
    public static readonly CoordinateSystemChoice LocalMetres = CoordinateSystemChoice.Local(LinearUnit.Metre);

    public static ImportResult Read(string text, CoordinateSystemChoice? system = null) =>
        GeoJsonReader.Read(Encoding.UTF8.GetBytes(text), new() { SourceName = "a.geojson", CoordinateSystem = system });

    /// <summary>Reads as local metres, which leaves the numbers as they are.</summary>
    public static ImportResult ReadLocal(string text) => Read(text, LocalMetres);

    public static ImportProblem Problem(this ImportResult result, string code) => Assert.Single(result.Problems, p => p.Code == code);

    public static string[] Codes(this ImportResult result) => [.. result.Problems.Select(p => p.Code)];

    public static (double, double)[] Places(this ImportedLine line) => [.. line.Points.Select(p => (p.East, p.North))];
}
