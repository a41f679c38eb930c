using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>A line as it is drawn: its vertices in order and its legs with their stations. It needs no plan and no sound job.</summary>
public sealed class LineShape
{
    private LineShape(Line line, IReadOnlyList<Vertex> vertices, IReadOnlyList<LegPath> legs, IReadOnlyList<long> starts)
        => (Line, Vertices, Legs, StartsNm) = (line, vertices, legs, starts);

    public Line Line { get; }

    /// <summary>In order along the line.</summary>
    public IReadOnlyList<Vertex> Vertices { get; }

    /// <summary>Leg i leaves vertex i; a closed line has one that comes back.</summary>
    public IReadOnlyList<LegPath> Legs { get; }

    /// <summary>Station at which each leg starts, and at last the length of the line.</summary>
    public IReadOnlyList<long> StartsNm { get; }

    public long LevelNm => StartsNm[^1];

    public static LineShape Of(Line line)
    {
        List<Vertex> vertices = [.. line.Vertices.OrderBy(v => v.Order.Value ?? "", StringComparer.Ordinal)];
        var count = line.Closed && vertices.Count > 2 ? vertices.Count : Math.Max(0, vertices.Count - 1);
        List<LegPath> legs = new(count);
        List<long> starts = new(count + 1) { 0 };
        for (var i = 0; i < count; i++)
        {
            legs.Add(LegPath.Of(vertices[i], vertices[(i + 1) % vertices.Count]));
            starts.Add(Whole.Sum(starts[i], legs[i].LevelNm));
        }
        return new(line, vertices, legs, starts);
    }

    /// <summary>Index of a vertex; -1 where the line has none such.</summary>
    public int IndexOf(VertexId id)
    {
        for (var i = 0; i < Vertices.Count; i++)
            if (Vertices[i].Id == id) return i;
        return -1;
    }

    /// <summary>Index of a leg; -1 where the line has none such.</summary>
    public int IndexOf(LegId id)
    {
        for (var i = 0; i < Legs.Count; i++)
            if (Vertices[i].Leg?.Id == id) return i;
        return -1;
    }

    /// <summary>Index of the leg a station lies on; a vertex belongs to the leg after it.</summary>
    public int LegAt(long stationNm)
    {
        var (low, high) = (0, Legs.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (StartsNm[middle] <= stationNm) low = middle;
            else high = middle - 1;
        }
        return low;
    }

    public SitePoint Point(long stationNm)
    {
        if (Legs.Count == 0) return Vertices.Count > 0 ? LegPath.PointOf(Vertices[0]) : default;
        var leg = LegAt(stationNm);
        return Legs[leg].At(stationNm - StartsNm[leg]);
    }

    public int Next(int vertex) => (vertex + 1) % Vertices.Count;

    /// <summary>The leg that comes into a vertex; -1 at the start of an open line.</summary>
    public int LegInto(int vertex) => vertex > 0 ? vertex - 1 : Line.Closed ? Legs.Count - 1 : -1;

    /// <summary>Degrees the line turns at a vertex, right positive; nothing at an end of an open line.</summary>
    public double? TurnAt(int vertex)
    {
        var into = LegInto(vertex);
        return into < 0 || vertex >= Legs.Count ? null : Direction.Between(Legs[into].Ahead, Legs[vertex].Heading);
    }
}
