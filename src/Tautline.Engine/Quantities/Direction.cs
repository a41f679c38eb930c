using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>
/// A horizontal direction as a unit vector of east and north. Angles are azimuths: degrees clockwise from north.
/// The default value is the zero vector, which is no direction: make one through the named ways in.
/// </summary>
public readonly record struct Direction(double East, double North)
{
    public static Direction DueNorth => new(0, 1);

    public static Direction DueEast => new(1, 0);

    public static Direction DueSouth => new(0, -1);

    public static Direction DueWest => new(-1, 0);

    /// <summary>Degrees clockwise from north, in [0, 360).</summary>
    public double AzimuthDegrees
    {
        get
        {
            var degrees = Trig.Atan2Degrees(East, North);
            if (degrees >= 0) return degrees;
            var turned = degrees + 360;
            // A hair west of north may round up to a full circle.
            return turned < 360 ? turned : 0;
        }
    }

    /// <summary>The direction a quarter turn to the left.</summary>
    public Direction Left => Unsigned(-North, East);

    /// <param name="degrees">Clockwise from north; any finite number.</param>
    public static Direction FromAzimuthDegrees(double degrees)
    {
        var (sin, cos) = Trig.SinCosDegrees(degrees);
        return new(sin, cos);
    }

    /// <summary>The direction of a vector of any length.</summary>
    /// <exception cref="ArgumentException">The vector is zero or not finite.</exception>
    public static Direction FromVector(double east, double north)
    {
        var larger = Math.Max(Math.Abs(east), Math.Abs(north));
        if (!(larger > 0) || !double.IsFinite(larger))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"({east}, {north}) has no direction."));
        // Dividing by the larger part first keeps the squares in range.
        var (e, n) = (east / larger, north / larger);
        var norm = Math.Sqrt(e * e + n * n);
        return Unsigned(e / norm, n / norm);
    }

    /// <summary>The turn from <paramref name="a"/> to <paramref name="b"/> in degrees, right positive, in (-180, 180].</summary>
    public static double Between(Direction a, Direction b)
    {
        var toTheRight = a.North * b.East - a.East * b.North;
        var ahead = a.East * b.East + a.North * b.North;
        return Trig.Atan2Degrees(toTheRight, ahead);
    }

    /// <summary>The opposite direction.</summary>
    public static Direction operator -(Direction a) => Unsigned(-a.East, -a.North);

    public Direction TurnRight(double degrees)
    {
        var (sin, cos) = Trig.SinCosDegrees(degrees);
        return Unsigned(East * cos + North * sin, North * cos - East * sin);
    }

    public Direction TurnLeft(double degrees) => TurnRight(-degrees);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{East} E, {North} N");

    // Adding zero turns -0 into 0, so that printed and hashed values do not differ by a sign nobody sees.
    private static Direction Unsigned(double east, double north) => new(east + 0.0, north + 0.0);
}
