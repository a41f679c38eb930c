namespace Tautline.Formats.Coordinates;

/// <summary>An ellipsoid of revolution.</summary>
/// <param name="Name">Its usual name.</param>
/// <param name="SemiMajorAxis">Metres.</param>
/// <param name="InverseFlattening">a / (a - b).</param>
internal sealed record ReferenceEllipsoid(string Name, double SemiMajorAxis, double InverseFlattening)
{
    private double EccentricitySquared => (2 - 1 / InverseFlattening) / InverseFlattening;

    /// <summary>Radius of curvature along the meridian, metres.</summary>
    public double MeridianRadius(double latitude)
    {
        var w = Denominator(latitude);
        return SemiMajorAxis * (1 - EccentricitySquared) / (w * Math.Sqrt(w));
    }

    /// <summary>Mean radius of curvature: the root of meridian radius times the radius across it, metres.</summary>
    public double MeanRadius(double latitude) =>
        SemiMajorAxis * Math.Sqrt(1 - EccentricitySquared) / Denominator(latitude);

    private double Denominator(double latitude)
    {
        var sine = Math.Sin(double.DegreesToRadians(latitude));
        return 1 - EccentricitySquared * sine * sine;
    }
}
