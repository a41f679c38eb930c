using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>A leg by its heading and its level length.</summary>
public readonly record struct HeadingLeg(Direction Heading, Length Distance);

/// <summary>A leg by its level length and the angle at its end, towards the next leg.</summary>
/// <param name="Distance">Level.</param>
/// <param name="AngleDegrees">What kind of angle it is the notes say as a whole. Null where none was read: only after the last leg.</param>
public readonly record struct AngleLeg(Length Distance, double? AngleDegrees);

/// <summary>How the angles of a traverse were read.</summary>
public enum AngleKind
{
    /// <summary>Deflection from the line ahead, right positive, within (-180, 180).</summary>
    Turn,

    /// <summary>Between the two legs on the right hand, within (0, 360): the interior angle of a loop walked clockwise.</summary>
    OnRight,

    /// <summary>Between the two legs on the left hand, within (0, 360): the interior angle of a loop walked anticlockwise.</summary>
    OnLeft,
}

/// <summary>What a traverse is closed on, and what is asked of it.</summary>
public sealed record TraverseTerms
{
    /// <summary>The known point the last leg should reach; null for a loop, which returns to its start.</summary>
    public SitePoint? KnownEnd { get; init; }

    /// <summary>The known heading that the angle at a known end turns to; without it such a traverse has no angular check.</summary>
    public Direction? KnownHeading { get; init; }

    /// <summary>The n of the poorest precision 1:n that passes without a warning; 0 asks for none.</summary>
    public double LeastPrecision { get; init; }

    /// <summary>
    /// The c of c * sqrt(angles) degrees up to which the angles still belong to a figure that closes. 1 degree, our own
    /// figure, is far more than a transit's slips and about a hand compass's.
    /// </summary>
    public double AngleSlipDegrees { get; init; } = 1;

    /// <summary>True to take the angular misclosure out in equal shares before the headings are carried.</summary>
    public bool SpreadAngles { get; init; }
}
