using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Picture;
using Tautline.Engine.Quantities;

namespace Tautline.Desk.Map;

/// <summary>The words and single things of a picture as the scripts read them; what there are thousands of goes beside it as packed bytes.</summary>
public sealed record MapContent(
    bool Metric, IReadOnlyList<MapLine> Lines, IReadOnlyList<LegPicture> Legs, IReadOnlyList<VertexPicture> Vertices, IReadOnlyList<GatePicture> Gates,
    IReadOnlyList<StretchPicture> Stretches, IReadOnlyList<PinPicture> Pins, IReadOnlyList<MarkPicture> Stations, IReadOnlyList<TiePicture> Ties,
    IReadOnlyList<PullPicture> Pulls, IReadOnlyList<DropPicture> Drops, IReadOnlyList<MapProblem> Problems, IReadOnlyList<double> Extent)
{
    public static MapContent Of(PlanPicture p, UnitSystem units) => new(
        units == UnitSystem.Metric,
        [.. p.Lines.Select(l => new MapLine(l.Id.Value, l.Name, l.Closed, l.Plan, l.FirstLeg, l.Legs, l.FirstVertex, l.Vertices, l.FirstPost, l.Posts))],
        p.Legs, p.Vertices, p.Gates, p.Stretches, p.Pins, p.Stations, p.Ties, p.Pulls, p.Drops,
        [.. p.Problems.Select(x => new MapProblem(x.Index, (int)x.Severity, x.East, x.North))], p.Extent);

    public static byte[] Packed<T>(ReadOnlyMemory<T> numbers) where T : struct => MemoryMarshal.AsBytes(numbers.Span).ToArray();
}

public sealed record MapLine(
    string Id, string Name, bool Closed, int Plan, int FirstLeg, int Legs, int FirstVertex, int Vertices, int FirstPost, int Posts);

public sealed record MapProblem(int Index, int Severity, double East, double North);

/// <summary>Where a point came to lie after snapping, with length and turn of the leg to it in words.</summary>
public sealed record SnapAnswer(double East, double North, string Kind, bool Round, string Length, string Turn);

/// <summary>The point that a typed length and angle lead to, or what is wrong with them.</summary>
public sealed record TypedAnswer(bool Ok, double East, double North, string Message);

/// <summary>Where a thing would come to stand.</summary>
public sealed record AlongAnswer(bool Found, double East, double North, string Words, IReadOnlyList<double> Path)
{
    public static AlongAnswer Nowhere { get; } = new(false, 0, 0, "", []);
}

/// <summary>What is pointed at, as the scripts name it.</summary>
public sealed record MapTarget(string Kind, int Line, int Index, string Id);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals)]
[JsonSerializable(typeof(MapContent))]
[JsonSerializable(typeof(SnapAnswer))]
[JsonSerializable(typeof(TypedAnswer))]
[JsonSerializable(typeof(AlongAnswer))]
[JsonSerializable(typeof(string[]))]
public sealed partial class MapJson : JsonSerializerContext;
