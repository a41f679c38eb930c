using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>The checks and small sums that traverse and curve share.</summary>
internal static class Survey
{
    /// <summary>A million kilometres: beyond it a figure is a slip of the keyboard, and squares begin to lose their meaning.</summary>
    private const double LargestMetres = 1e9;

    public static bool IsMeasure(double metres) => Math.Abs(metres) <= LargestMetres;

    public static bool IsMeasure(SitePoint point) => IsMeasure(point.East.Metres) && IsMeasure(point.North.Metres);

    /// <summary>A direction is a unit vector; the default value and what came of bad arithmetic are none.</summary>
    public static bool IsDirection(Direction heading)
        => Math.Abs(heading.East * heading.East + heading.North * heading.North - 1) < 1e-9;

    public static Length Hypotenuse(Length a, Length b) => new(Math.Sqrt(a.Metres * a.Metres + b.Metres * b.Metres));

    /// <summary>The way from one point to another; null where they are the same.</summary>
    public static Direction? Way(SitePoint from, SitePoint to) => Way((to.East - from.East).Metres, (to.North - from.North).Metres);

    public static Direction? Way(double east, double north) => east == 0 && north == 0 ? null : Direction.FromVector(east, north);

    public static Surveyed<T> Fail<T>(ProblemCode code, string path, params Figure[] figures)
        where T : class
        => new(null, [new Problem(code, new Place(path), figures)]);

    /// <summary>Tells of points that are no coordinates.</summary>
    public static void CheckPoint(SitePoint point, string path, ProblemList problems)
    {
        if (!IsMeasure(point)) problems.Add(ProblemCode.NotFinite, new Place(path));
    }

    public static void CheckDirection(Direction heading, string path, ProblemList problems)
    {
        if (!IsDirection(heading)) problems.Add(ProblemCode.HeadingMissing, new Place(path));
    }
}
