namespace Tautline.Formats.Coordinates;

/// <summary>A zone of the Universal Transverse Mercator grid.</summary>
/// <param name="Number">1 to 60, from 180 W eastwards.</param>
/// <param name="South">True for the southern half, with its own false northing.</param>
public readonly record struct UtmZone(int Number, bool South)
{
    /// <summary>Northern limit of the grid, degrees.</summary>
    public const double NorthLimit = 84;

    /// <summary>Southern limit of the grid, degrees.</summary>
    public const double SouthLimit = -80;

    /// <summary>Longitude of the zone's middle, degrees.</summary>
    public double CentralMeridian => Number * 6 - 183;

    /// <summary>
    /// The zone of a place, with the widened zones of south-west Norway (32V) and Svalbard (31X, 33X, 35X, 37X).
    /// Longitude may be any angle; the latitude is taken to be within the grid's limits.
    /// </summary>
    public static UtmZone Of(GeographicPoint point)
    {
        var longitude = Wrap(point.Longitude);
        return new UtmZone(NumberOf(point.Latitude, longitude), point.Latitude < 0);
    }

    /// <summary>The same direction within [-180, 180).</summary>
    internal static double Wrap(double longitude) => longitude - 360 * Math.Floor((longitude + 180) / 360);

    private static int NumberOf(double latitude, double longitude) => (latitude, longitude) switch
    {
        ( >= 56 and < 64, >= 3 and < 12) => 32,
        ( >= 72, >= 0 and < 9) => 31,
        ( >= 72, >= 9 and < 21) => 33,
        ( >= 72, >= 21 and < 33) => 35,
        ( >= 72, >= 33 and < 42) => 37,
        _ => (int)Math.Floor((longitude + 180) / 6) + 1,
    };

    /// <summary>"33N".</summary>
    public override string ToString() => $"{Number}{(South ? 'S' : 'N')}";
}
