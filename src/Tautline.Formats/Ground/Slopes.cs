namespace Tautline.Formats.Ground;

/// <summary>
/// How steep ground is: how much of it, by plan area or by pairs of neighbouring heights, lies in each of a row of classes of slope.
/// Heights and plan count in one unit; <see cref="SteeperThan"/> takes another ratio of the two.
/// </summary>
internal sealed class Slopes
{
    private const int PerDoubling = 8;
    private const int Classes = 24 * PerDoubling; // from 1/4096 to 4096
    private readonly double[] _weights = new double[Classes];
    private double _all;

    public bool IsEmpty => _all <= 0;

    /// <param name="slope">Rise over run, not below zero.</param>
    /// <param name="weight">Area, or 1.</param>
    public void Add(double slope, double weight = 1)
    {
        if (!(weight > 0) || !double.IsFinite(slope)) return;
        _all += weight;
        _weights[ClassOf(slope)] += weight;
    }

    /// <summary>The share of the ground that is steeper than a slope, with heights so many times as large as they were added; to a class of 9 %.</summary>
    public double SteeperThan(double slope, double heightFactor = 1)
    {
        var sum = 0.0;
        for (var i = ClassOf(slope / heightFactor); i < Classes; i++) sum += _weights[i];
        return _all > 0 ? sum / _all : 0;
    }

    /// <summary>Half of the ground is steeper than this; to a class of 9 %.</summary>
    public double Middle()
    {
        var sum = 0.0;
        var i = 0;
        while (i < Classes - 1 && (sum += _weights[i]) < _all / 2) i++;
        return Math.Pow(2, (i + 0.5) / PerDoubling - 12);
    }

    private static int ClassOf(double slope) =>
        slope <= 0 ? 0 : Math.Clamp((int)Math.Floor((Math.Log2(slope) + 12) * PerDoubling), 0, Classes - 1);
}
