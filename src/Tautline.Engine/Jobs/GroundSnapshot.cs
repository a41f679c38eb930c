using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>
/// The ground on both sides of the job's lines, cut out of a larger surface, so that a line can be moved a little without the file it came from.
/// Either triangles (points and faces) or a grid. Metres, in the job's own east and north, heights over the job's datum.
/// </summary>
public sealed record GroundSnapshot
{
    public required GroundSource Source { get; init; }

    /// <summary>How far to each side of the lines the ground was kept.</summary>
    public required Length Width { get; init; }

    /// <summary>East, north and height of each point, one after the other.</summary>
    public IReadOnlyList<double> Points { get; init => field = value ?? []; } = [];

    /// <summary>Three points of each triangle, counted from zero.</summary>
    public IReadOnlyList<int> Faces { get; init => field = value ?? []; } = [];

    public GroundGrid? Grid { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>What a snapshot was taken from.</summary>
public sealed record GroundSource
{
    public required string File { get; init; }

    /// <summary>Of the file's bytes, in hexadecimal.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Coordinate system the file was read in, where it has one.</summary>
    public string? System { get; init; }

    /// <summary>Unit its heights were read in.</summary>
    public string? HeightUnit { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A grid of heights in the middle of cells, row 0 in the north, column 0 in the west; only the cells near the lines.</summary>
public sealed record GroundGrid
{
    public required int Rows { get; init; }

    public required int Columns { get; init; }

    /// <summary>Western side of the grid.</summary>
    public required double West { get; init; }

    /// <summary>Northern side of the grid.</summary>
    public required double North { get; init; }

    public required double CellEast { get; init; }

    public required double CellNorth { get; init; }

    /// <summary>Stretches of rows that are known.</summary>
    public IReadOnlyList<GroundGridPart> Parts { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Heights of neighbouring cells in one row, from west to east.</summary>
public sealed record GroundGridPart
{
    public required int Row { get; init; }

    /// <summary>Column of the first.</summary>
    public required int Column { get; init; }

    public IReadOnlyList<double> Heights { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
