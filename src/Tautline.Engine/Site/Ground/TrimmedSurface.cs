namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Ground cut off at a boundary and left out of voids. The surface within is untouched: the cut is made exactly along the outlines and needs no
/// heights of theirs. The outlines themselves have ground.
/// </summary>
public sealed class TrimmedSurface : IGroundSurface
{
    private readonly IGroundSurface whole;
    private readonly PlanRing? boundary;
    private readonly PlanRing[] voids;

    private TrimmedSurface(IGroundSurface whole, PlanRing? boundary, PlanRing[] voids, IReadOnlyList<GroundFinding> findings) =>
        (this.whole, this.boundary, this.voids, Findings) = (whole, boundary, voids, findings);

    /// <summary>Outlines that could not be used.</summary>
    public IReadOnlyList<GroundFinding> Findings { get; }

    /// <summary>A surface within an outline, if there is one, and outside of others; outlines are closed of themselves.</summary>
    public static TrimmedSurface Of(IGroundSurface whole, IReadOnlyList<PlanPoint>? boundary, IReadOnlyList<IReadOnlyList<PlanPoint>> voids)
    {
        var findings = new GroundFindings();
        var outer = boundary is null ? null : Ring(boundary, findings);
        var rings = voids.Select(v => Ring(v, findings)).OfType<PlanRing>().ToArray();
        return new(whole, outer, rings, findings.Found);
    }

    /// <inheritdoc/>
    public double? HeightAt(double east, double north) =>
        HasGround(new(GroundPoint.Settle(east), GroundPoint.Settle(north))) ? whole.HeightAt(east, north) : null;

    /// <inheritdoc/>
    public GroundProfile Along(GroundPath path)
    {
        var stays = Stays(path);
        var profile = new ProfileBuilder(path.Range);
        var first = 0;
        foreach (var span in whole.Along(path).Stretches.SelectMany(Spans))
        {
            while (first < stays.Count && stays[first].To <= span.From) first++;
            for (var i = first; i < stays.Count && stays[i].From < span.To; i++)
                Add(profile, span, stays[i]);
        }
        return profile.Build();
    }

    private static void Add(ProfileBuilder profile, GroundSpan span, StationRange range)
    {
        // An upright step has no length of its own; the next piece begins on top of it.
        if (Math.Min(span.To, range.To) > Math.Max(span.From, range.From)) profile.Add(span.Within(range.From, range.To));
    }

    private static IEnumerable<GroundSpan> Spans(ProfileStretch stretch) => stretch.Points.Zip(
        stretch.Points.Skip(1), (a, b) => new GroundSpan(a.Station, b.Station, a.Height, b.Height));

    /// <summary>The stations of a path where the outlines let the ground be.</summary>
    private List<StationRange> Stays(GroundPath path)
    {
        var ranges = new List<StationRange>();
        for (var i = 1; i < path.Points.Count; i++)
        {
            var piece = new PathPiece(path.Points[i - 1], path.Points[i]);
            var meetings = (boundary is null ? voids : voids.Prepend(boundary)).Select(r => new Meeting(r, piece)).ToArray();
            double[] parts = [.. meetings.SelectMany(m => m.Parts).Where(p => p is > 0 and < 1).Append(0).Append(1).Order()];
            for (var k = 1; k < parts.Length; k++)
                if (parts[k] > parts[k - 1] && HasGround(meetings, (parts[k] + parts[k - 1]) / 2))
                    ranges.Add(new(piece.StationAt(parts[k - 1]), piece.StationAt(parts[k])));
        }
        return ranges;
    }

    private bool HasGround(Meeting[] meetings, double part) =>
        meetings.All(m => m.Ring == boundary ? m.Holds(part) >= 0 : m.Holds(part) <= 0);

    private bool HasGround(PlanPoint at) =>
        (boundary is null || boundary.Holds(at.East, at.North) >= 0) && voids.All(v => v.Holds(at.East, at.North) <= 0);

    private static PlanRing? Ring(IReadOnlyList<PlanPoint> corners, GroundFindings findings)
    {
        var usable = corners.Where(c => new GroundPoint(c.East, c.North, 0).IsUsable).Distinct().Count();
        if (usable >= 3 && corners.All(c => new GroundPoint(c.East, c.North, 0).IsUsable)) return new(corners);
        var at = corners.Count == 0 ? default : corners[0];
        findings.Add(GroundFindingKind.ShortRing, new(at.East, at.North, 0), usable);
        return null;
    }

    /// <summary>How a piece of a path meets an outline.</summary>
    private sealed class Meeting
    {
        private readonly PathPiece piece;
        private readonly List<(double From, double To)> along = [];

        public Meeting(PlanRing ring, PathPiece piece)
        {
            (Ring, this.piece) = (ring, piece);
            ring.Meet(piece, Parts, along);
        }

        public PlanRing Ring { get; }

        public List<double> Parts { get; } = [];

        public int Holds(double part) => along.Any(a => part >= a.From && part <= a.To) ? 0 : Ring.Holds(
            piece.From.East + part * (piece.To.East - piece.From.East), piece.From.North + part * (piece.To.North - piece.From.North));
    }
}
