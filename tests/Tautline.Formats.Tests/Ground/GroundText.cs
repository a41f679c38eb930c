using System.Text;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests.Ground;

/// <summary>Short ways to read ground files in tests.</summary>
internal static class GroundText
{
    public const string Gully = "terrain/west-bijou-gully-3m.asc";
    public const string Indiana = "terrain/indiana-lidar-1m-float64.tif";
    public const string IndianaFeet = "terrain/derived-indiana-5ft-ftus-float32-tiled-deflate.tif";
    public const string Vermont = "terrain/vermont-90m-float32-lzw.tif";
    public const string Lot = "terrain/lot-survey-tin-metres.xml";
    public const string Park = "survey/independence-park-topo0.asc";
    public const string Oxford = "survey/oxford-archaeology-tcr705.txt";

    public static readonly CoordinateSystemChoice LocalMetres = CoordinateSystemChoice.Local(LinearUnit.Metre);
    public static readonly CoordinateSystemChoice LocalFeet = CoordinateSystemChoice.Local(LinearUnit.Foot);

    /// <summary>Local metres, heights in metres.</summary>
    public static readonly GroundOptions Metres = new() { SourceName = "ground", System = LocalMetres, HeightUnit = LinearUnit.Metre };

    public static GroundFile Read(string text, GroundOptions? options = null) => GroundReader.Read(Encoding.UTF8.GetBytes(text), options ?? Metres);

    public static GroundFile Points(string text, string? columns = "PNEZD", SurveyPointOptions? options = null) =>
        Read(text, Metres with { Format = GroundFormat.SurveyPoints, Points = (options ?? new()) with { Columns = columns is null ? null : ColumnOrder.Of(columns) } });

    public static GroundFile Shared(string path, GroundOptions? options = null) => GroundReader.Read(SharedData.Read(path), (options ?? new()) with { SourceName = Path.GetFileName(path) });

    public static GroundFile SharedPoints(string path, string columns, SurveyPointOptions? options = null) =>
        Shared(path, Metres with { Points = (options ?? new()) with { Columns = ColumnOrder.Of(columns) } });

    public static string[] Codes(this GroundFile file) => [.. file.Problems.Select(p => p.Code)];

    public static string[] Codes(this PlacedGround ground) => [.. ground.Problems.Select(p => p.Code)];

    public static ImportProblem Problem(this GroundFile file, string code) => Single(file.Problems, code);

    public static ImportProblem Problem(this PlacedGround ground, string code) => Single(ground.Problems, code);

    public static GroundQuestion Question(this GroundFile file, GroundQuestionKind kind) => Assert.Single(file.Questions, q => q.Kind == kind);

    public static PointContent PointContent(this GroundFile file) => Assert.IsType<PointContent>(file.Content);

    public static GridContent Grid(this GroundFile file) => Assert.IsType<GridContent>(file.Content);

    public static FaceContent Faces(this GroundFile file) => Assert.IsType<FaceContent>(file.Content);

    private static ImportProblem Single(IEnumerable<ImportProblem> problems, string code)
    {
        var found = problems.Where(p => p.Code == code).ToList();
        Assert.True(found.Count == 1, $"{found.Count} problems {code} among: {string.Join(" | ", problems)}");
        return found[0];
    }
}
