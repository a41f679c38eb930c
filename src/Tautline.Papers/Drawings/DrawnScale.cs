using System.Globalization;
using Tautline.Documents.Scenes;
using Tautline.Engine.Quantities;

namespace Tautline.Papers.Drawings;

/// <summary>A scale people have a ruler for. US: so many feet to the inch (engineer's scales); metric: 1 to so many (ISO 5455:1979, its series 1, 2, 5 by tens).</summary>
/// <param name="UnitsPerMetre">Points on paper to the metre.</param>
internal readonly record struct DrawnScale(double UnitsPerMetre, string Words, double BarMetres, string BarWords)
{
    private const double Foot = 0.3048;
    private const double PointsPerMetre = 72 / 0.0254;

    private static readonly double[] feetToTheInch =
        [1, 2, 3, 4, 5, 6, 8, 10, 20, 30, 40, 50, 60, 80, 100, 200, 300, 400, 500, 600, 800, 1000, 2000, 3000, 4000, 5000, 6000, 8000, 10_000, 20_000, 50_000, 100_000];

    private static readonly double[] oneTo = [10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, 10_000, 20_000, 25_000, 50_000, 100_000, 200_000, 500_000, 1_000_000];

    /// <summary>The largest at which so many metres fit into so many points.</summary>
    public static DrawnScale For(double metresAcross, double metresUp, double width, double height, UnitSystem units)
    {
        double most = Math.Min(width / Math.Max(metresAcross, 0.5), height / Math.Max(metresUp, 0.5));
        if (units == UnitSystem.Metric)
        {
            double n = oneTo.FirstOrDefault(s => PointsPerMetre / s <= most, oneTo[^1]);
            double bar = Round(n * 0.03);
            return new(PointsPerMetre / n, string.Create(CultureInfo.InvariantCulture, $"1:{n:0}"), bar, string.Create(CultureInfo.InvariantCulture, $"{bar:#,0.##} m"));
        }

        double feet = feetToTheInch.FirstOrDefault(f => 72 / (f * Foot) <= most, feetToTheInch[^1]);
        return new(72 / (feet * Foot), string.Create(CultureInfo.InvariantCulture, $"1 in = {feet:#,0} ft"), feet * Foot, string.Create(CultureInfo.InvariantCulture, $"{feet:#,0} ft"));
    }

    private static double Round(double value)
    {
        double ten = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return value / ten >= 5 ? 5 * ten : value / ten >= 2 ? 2 * ten : ten;
    }
}
