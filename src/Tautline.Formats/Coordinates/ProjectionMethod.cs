namespace Tautline.Formats.Coordinates;

internal enum ProjectionMethod
{
    TransverseMercator,
    LambertConformalConic2SP,
}
