using System.Globalization;

namespace Tautline.Formats.Coordinates;

/// <summary>A place on the earth in degrees, north and east positive.</summary>
public readonly record struct GeographicPoint(double Latitude, double Longitude)
{
    /// <summary>For people, to about 10 m: "44.0557 N, 123.0696 W".</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Math.Abs(Latitude):0.0000} {(Latitude < 0 ? 'S' : 'N')}, {Math.Abs(Longitude):0.0000} {(Longitude < 0 ? 'W' : 'E')}");
}
