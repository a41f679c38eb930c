using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>Degrees, minutes and whole seconds: the way angles are written on plats.</summary>
internal static class DegreesText
{
    public const long SecondsPerDegree = 3600;
    public const long SecondsPerCircle = 360 * SecondsPerDegree;

    /// <summary>The nearest whole second, halves away from zero.</summary>
    public static long WholeSeconds(double degrees) =>
        (long)Math.Round(degrees * SecondsPerDegree, MidpointRounding.AwayFromZero);

    /// <param name="seconds">Zero or more.</param>
    public static string Format(long seconds)
    {
        var (degrees, rest) = Math.DivRem(seconds, SecondsPerDegree);
        return string.Create(CultureInfo.InvariantCulture, $"{degrees}°{rest / 60:00}'{rest % 60:00}\"");
    }
}
