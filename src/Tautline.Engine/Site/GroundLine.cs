using Tautline.Engine.Layout.Fit;

namespace Tautline.Engine.Site;

/// <summary>
/// The measured ground under one line from its start to its end: straight between vertices, stations level. Two vertices at one station are an
/// upright step.
/// </summary>
public sealed class GroundLine
{
    private readonly GroundVertex[] vertices;
    private readonly long[] stations;
    private readonly long[] along;

    /// <param name="vertices">At least two, stations not falling, the first at zero and the last at the line's end.</param>
    public GroundLine(IReadOnlyList<GroundVertex> vertices)
    {
        this.vertices = [.. vertices];
        stations = [.. vertices.Select(v => (long)Math.Round(v.Station * 1e9))];
        along = new long[stations.Length];
        for (var i = 1; i < along.Length; i++)
            along[i] = along[i - 1] + Math.Max(stations[i] - stations[i - 1], Slant(this.vertices[i - 1], this.vertices[i]));
    }

    /// <summary>Stations and heights in metres.</summary>
    public IReadOnlyList<GroundVertex> Vertices => vertices;

    /// <summary>Length along the ground from the start to the end.</summary>
    public long AlongNm => along[^1];

    /// <summary>Height at a level station; at an upright step the height before it.</summary>
    public double HeightAt(long stationNm)
    {
        var i = First(stations, stationNm);
        if (i == 0 || stations[i] == stationNm) return vertices[i].Height;
        var part = (stationNm - stations[i - 1]) / (double)(stations[i] - stations[i - 1]);
        return vertices[i - 1].Height + (vertices[i].Height - vertices[i - 1].Height) * part;
    }

    /// <summary>Distance along the ground of a level station.</summary>
    public long Along(long stationNm) => Between(stations, along, stationNm);

    /// <summary>Level station of a distance along the ground.</summary>
    public long Station(long alongNm) => Between(along, stations, alongNm);

    /// <summary>Highest ground between two level stations, both included.</summary>
    public double HighestWithin(long fromNm, long toNm)
    {
        var highest = Math.Max(HeightAt(fromNm), HeightAt(toNm));
        for (var i = First(stations, fromNm); i < stations.Length && stations[i] <= toNm; i++) highest = Math.Max(highest, vertices[i].Height);
        return highest;
    }

    /// <summary>The ground between two level stations, with a vertex at each.</summary>
    public List<GroundVertex> Within(long fromNm, long toNm)
    {
        List<GroundVertex> part = [new(fromNm * 1e-9, HeightAt(fromNm))];
        for (var i = First(stations, fromNm); i < stations.Length && stations[i] < toNm; i++)
            if (stations[i] > fromNm) part.Add(new(stations[i] * 1e-9, vertices[i].Height));
        part.Add(new(toNm * 1e-9, HeightAt(toNm)));
        return part;
    }

    private static long Slant(GroundVertex a, GroundVertex b)
    {
        var (run, rise) = (b.Station - a.Station, b.Height - a.Height);
        return (long)Math.Round(Math.Sqrt(run * run + rise * rise) * 1e9);
    }

    /// <summary>Straight between the two entries around a value; clamped to the ends.</summary>
    private static long Between(long[] from, long[] to, long value)
    {
        var i = First(from, value);
        if (i == 0 || from[i] <= value) return to[i];
        var (low, high) = (i - 1, i);
        if (from[high] == from[low]) return to[low];
        return to[low] + (long)((2 * (Int128)(value - from[low]) * (to[high] - to[low]) + (from[high] - from[low])) / (2 * (Int128)(from[high] - from[low])));
    }

    /// <summary>Index of the first entry at or past a value, the last one where none is.</summary>
    private static int First(long[] sorted, long value)
    {
        var (low, high) = (0, sorted.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] >= value) high = middle;
            else low = middle + 1;
        }
        return low;
    }
}
