using Tautline.Engine.Site.Ground;

namespace Tautline.Formats.Ground.Placing;

/// <summary>
/// A surface that stays in its own coordinates and is asked through a map. Paths are laid over straight piece by straight piece, each so short that
/// the map bends and stretches it by less than <see cref="Tolerance"/>.
/// </summary>
internal sealed class MappedSurface(IGroundSurface inner, PlanMap map) : IGroundSurface
{
    /// <summary>In metres; as the Engine allows between an arc and its chords.</summary>
    public const double Tolerance = 0.0001;

    private const int MostHalvings = 12;

    /// <inheritdoc/>
    public double? HeightAt(double east, double north)
    {
        var (e, n) = map.ToFile(east, north);
        return IsPlace(e, n) ? inner.HeightAt(e, n) : null;
    }

    /// <inheritdoc/>
    public GroundProfile Along(GroundPath path)
    {
        var places = new List<PathPoint>();
        foreach (var point in path.Points)
        {
            if (places.Count > 0) Divide(places[^1], point, places, MostHalvings);
            places.Add(point);
        }
        var mapped = places.ConvertAll(p => map.ToFile(p.East, p.North));
        if (mapped.Exists(p => !IsPlace(p.East, p.North))) return new(path.Range, [], [path.Range]);
        var inFile = new GroundPath(new(mapped[0].East, mapped[0].North));
        var stations = new List<double> { 0 };
        foreach (var (east, north) in mapped.Skip(1)) stations.Add(inFile.LineTo(new(east, north)).Range.To);
        return Restationed(inner.Along(inFile), stations, places, path.Range);
    }

    private static bool IsPlace(double east, double north) => Math.Abs(east) <= GroundPoint.FurthestOut && Math.Abs(north) <= GroundPoint.FurthestOut;

    /// <summary>Adds the places between two that the map needs.</summary>
    private void Divide(PathPoint from, PathPoint to, List<PathPoint> into, int halvings)
    {
        var middle = new PathPoint((from.East + to.East) / 2, (from.North + to.North) / 2, (from.Station + to.Station) / 2);
        if (halvings == 0 || IsStraight(from, middle, to)) return;
        Divide(from, middle, into, halvings - 1);
        into.Add(middle);
        Divide(middle, to, into, halvings - 1);
    }

    private bool IsStraight(PathPoint from, PathPoint middle, PathPoint to)
    {
        var (a, b, m) = (map.ToFile(from.East, from.North), map.ToFile(to.East, to.North), map.ToFile(middle.East, middle.North));
        var (east, north) = (m.East - (a.East + b.East) / 2, m.North - (a.North + b.North) / 2);
        return Math.Sqrt(east * east + north * north) is not > Tolerance;
    }

    private static GroundProfile Restationed(GroundProfile found, List<double> from, List<PathPoint> to, StationRange range)
    {
        var at = new StationMap(from, to);
        var stretches = found.Stretches.Select(s => new ProfileStretch([.. s.Points.Select(p => new ProfilePoint(at.Of(p.Station), p.Height))])).ToList();
        return new(range, stretches, [.. found.Gaps.Select(g => new StationRange(at.Of(g.From), at.Of(g.To)))]);
    }

    /// <summary>From stations along the mapped path to those of the path itself; the same at every vertex, in proportion between.</summary>
    private sealed class StationMap(List<double> from, List<PathPoint> to)
    {
        public double Of(double station)
        {
            var found = from.BinarySearch(station);
            if (found >= 0) return to[found].Station;
            var after = Math.Clamp(~found, 1, from.Count - 1);
            if (from.Count == 1) return to[0].Station;
            var part = Math.Clamp((station - from[after - 1]) / (from[after] - from[after - 1]), 0, 1);
            return to[after - 1].Station + part * (to[after].Station - to[after - 1].Station);
        }
    }
}
