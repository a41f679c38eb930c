namespace Tautline.Engine.Layout.Fit;

/// <summary>The ground under a line as straight stretches between vertices.</summary>
internal sealed class GroundProfile
{
    private readonly IReadOnlyList<GroundVertex> vertices;

    public GroundProfile(IReadOnlyList<GroundVertex> vertices) => this.vertices = vertices;

    /// <summary>Height at a station; at a wall the height of its foot, from where a post there must reach up.</summary>
    public double At(double station)
    {
        var i = FirstAtOrAfter(station);
        if (i == vertices.Count) return vertices[^1].Height;
        var b = vertices[i];
        if (b.Station == station) return Lowest(i);
        if (i == 0) return b.Height;
        var a = vertices[i - 1];
        return a.Height + (b.Height - a.Height) * ((station - a.Station) / (b.Station - a.Station));
    }

    /// <summary>The ground of one bay: its two ends and every vertex between. Of a wall at a post each bay sees its own side.</summary>
    public void Between(double from, double to, List<GroundVertex> into)
    {
        into.Clear();
        var i = FirstAtOrAfter(from);
        while (i + 1 < vertices.Count && vertices[i + 1].Station <= from) i++;
        if (i == vertices.Count || vertices[i].Station > from) into.Add(new GroundVertex(from, At(from)));
        for (; i < vertices.Count && vertices[i].Station < to; i++) into.Add(vertices[i]);
        into.Add(i < vertices.Count && vertices[i].Station == to ? vertices[i] : new GroundVertex(to, At(to)));
    }

    private double Lowest(int i)
    {
        var lowest = vertices[i].Height;
        for (var k = i + 1; k < vertices.Count && vertices[k].Station == vertices[i].Station; k++) lowest = Math.Min(lowest, vertices[k].Height);
        return lowest;
    }

    private int FirstAtOrAfter(double station)
    {
        var (low, high) = (0, vertices.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (vertices[middle].Station < station) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
