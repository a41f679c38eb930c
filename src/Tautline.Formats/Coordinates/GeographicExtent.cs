namespace Tautline.Formats.Coordinates;

/// <summary>The area a system is meant for, degrees.</summary>
internal readonly record struct GeographicExtent(double South, double North, double West, double East)
{
    /// <summary>Whether a point lies inside, or outside by no more than the margin in degrees.</summary>
    public bool Holds(GeographicPoint point, double margin) =>
        point.Latitude >= South - margin && point.Latitude <= North + margin
        && point.Longitude >= West - margin && point.Longitude <= East + margin;
}
