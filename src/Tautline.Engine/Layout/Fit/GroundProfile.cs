namespace Tautline.Engine.Layout.Fit;

/// <summary>The ground under a line as straight stretches between vertices.</summary>
internal sealed class GroundProfile
{
    private readonly IReadOnlyList<GroundVertex> vertices;

    public GroundProfile(IReadOnlyList<GroundVertex> vertices) => this.vertices = vertices;

    /// <summary>Height at a station; at a wall the height before it.</summary>
    public double At(double station)
    {
        var i = FirstAtOrAfter(station);
        if (i == 0) return vertices[0].Height;
        if (i == vertices.Count) return vertices[^1].Height;
        var (a, b) = (vertices[i - 1], vertices[i]);
        if (b.Station == station) return b.Height;
        return a.Height + (b.Height - a.Height) * ((station - a.Station) / (b.Station - a.Station));
    }

    /// <summary>The ground of one bay: its two ends and every vertex within or at them.</summary>
    public void Between(double from, double to, List<GroundVertex> into)
    {
        into.Clear();
        var i = FirstAtOrAfter(from);
        if (i == vertices.Count || vertices[i].Station > from) into.Add(new GroundVertex(from, At(from)));
        for (; i < vertices.Count && vertices[i].Station <= to; i++) into.Add(vertices[i]);
        if (into[^1].Station < to) into.Add(new GroundVertex(to, At(to)));
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
