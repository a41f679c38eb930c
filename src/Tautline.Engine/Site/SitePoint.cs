using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>A point of the site plan by its distances east and north of the job's origin. The default value is the origin.</summary>
public readonly record struct SitePoint(Length East, Length North)
{
    /// <summary>The point a distance away.</summary>
    public SitePoint Step(Direction heading, Length distance) => new(East + distance * heading.East, North + distance * heading.North);

    public Length DistanceTo(SitePoint other) => Survey.Hypotenuse(other.East - East, other.North - North);
}
