namespace Tautline.Engine.Site.Ground;

/// <summary>
/// A point of the ground, in metres east and north of the job's origin and above its datum. Plain doubles: there may be a million of them.
/// </summary>
public readonly record struct GroundPoint(double East, double North, double Height)
{
    /// <summary>No plan coordinate is further out, in metres.</summary>
    public const double FurthestOut = 1e9;

    /// <summary>No ground is higher or deeper, in metres; what a file states beyond it marks a place without ground.</summary>
    public const double Highest = 1e5;

    /// <summary>Whether all three are numbers within the limits.</summary>
    public bool IsUsable => Math.Abs(East) <= FurthestOut && Math.Abs(North) <= FurthestOut && Math.Abs(Height) <= Highest;

    /// <summary>The same point as the exact tests want it: closer than a picometre to an axis is on it, so that no product underflows.</summary>
    internal GroundPoint Settled => new(Settle(East), Settle(North), Height);

    internal static double Settle(double metres) => Math.Abs(metres) < 1e-12 ? 0 : metres;

    internal static GroundPoint Between(in GroundPoint a, in GroundPoint b, double part) => new(
        a.East + part * (b.East - a.East), a.North + part * (b.North - a.North), a.Height + part * (b.Height - a.Height));
}

/// <summary>A place in plan, in metres east and north of the job's origin.</summary>
public readonly record struct PlanPoint(double East, double North);

/// <summary>A rectangle in plan, sides along the axes, in metres.</summary>
internal readonly record struct PlanBox(double West, double South, double East, double North)
{
    public static PlanBox Of(ReadOnlySpan<GroundPoint> points)
    {
        var (w, s, e, n) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        foreach (ref readonly var p in points)
            (w, s, e, n) = (Math.Min(w, p.East), Math.Min(s, p.North), Math.Max(e, p.East), Math.Max(n, p.North));
        return new(w, s, e, n);
    }

    public static PlanBox Of(in GroundPoint a, in GroundPoint b) =>
        new(Math.Min(a.East, b.East), Math.Min(a.North, b.North), Math.Max(a.East, b.East), Math.Max(a.North, b.North));

    public static PlanBox Of(in GroundPoint a, in GroundPoint b, in GroundPoint c) => new(
        Math.Min(a.East, Math.Min(b.East, c.East)), Math.Min(a.North, Math.Min(b.North, c.North)),
        Math.Max(a.East, Math.Max(b.East, c.East)), Math.Max(a.North, Math.Max(b.North, c.North)));
}
