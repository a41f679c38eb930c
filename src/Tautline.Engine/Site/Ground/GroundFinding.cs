namespace Tautline.Engine.Site.Ground;

/// <summary>What was found wrong with, or is worth knowing about, the data of a ground surface.</summary>
public enum GroundFindingKind
{
    /// <summary>A coordinate is no number or beyond the limits of <see cref="GroundPoint"/>; the point is left out. Figures: its number.</summary>
    UnusablePoint,

    /// <summary>Two points share a place but not a height; the first stays. Figures: height kept, height left out, number of each point.</summary>
    TwoHeights,

    /// <summary>Fewer than three points that are not in one line: there is no surface. Figures: points that could be used.</summary>
    TooFewPoints,

    /// <summary>Two breaklines cross and differ in height there; the piece of the later one is left out. Figures: height of the first, of the later.</summary>
    BreaklinesCross,

    /// <summary>Two breaklines cross at one height and were joined there. Figures: height of the first, of the later.</summary>
    BreaklinesJoined,

    /// <summary>A point lies on a breakline, to a micrometre, but off its height; the line passes through the point. Figures: height of the point, of the line.</summary>
    PointOnBreakline,

    /// <summary>A boundary or void with fewer than three places for corners, or an unusable one; it is left out. Figures: usable corners.</summary>
    ShortRing,

    /// <summary>A face names a point that is not there or unusable; it is left out. Figures: number of the face.</summary>
    FaceWithoutPoint,

    /// <summary>A face covers no area in plan: it stands upright or has a corner twice; it is left out. Figures: number of the face.</summary>
    FaceWithoutArea,

    /// <summary>More than one face lies on the same side of an edge: they overlap, and either may give the height. Figures: number of the later face.</summary>
    FacesOverlap,
}

/// <summary>One finding about the data of a surface; bad data never throws.</summary>
/// <param name="East">Where, in metres.</param>
/// <param name="North">Where, in metres.</param>
/// <param name="Figures">As the kind says: heights in metres; numbers count from zero, the points of breaklines after the points.</param>
public sealed record GroundFinding(GroundFindingKind Kind, double East, double North, IReadOnlyList<double> Figures);

/// <summary>Collects findings in the order they are met.</summary>
internal sealed class GroundFindings
{
    private readonly List<GroundFinding> found = [];

    public IReadOnlyList<GroundFinding> Found => found;

    public void Add(GroundFindingKind kind, in GroundPoint at, params double[] figures) => found.Add(new(kind, at.East, at.North, figures));
}
