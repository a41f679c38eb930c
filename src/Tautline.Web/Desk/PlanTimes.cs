using System.Globalization;

namespace Tautline.Web.Desk;

/// <summary>What planning took, in milliseconds.</summary>
/// <param name="First">The run that made the plan: code met for the first time is slow in a browser.</param>
/// <param name="Again">The same job planned again, run by run; empty until asked for.</param>
public sealed record PlanTimes(double First, IReadOnlyList<double> Again)
{
    public string FirstText => Text(First);

    public string AgainText => $"{Text(Median)} (median of {Again.Count}, {Text(Again.Min())} to {Text(Again.Max())})";

    /// <summary>The middle one of the repeated runs; of an even number the mean of the two.</summary>
    public double Median
    {
        get
        {
            double[] sorted = [.. Again.Order()];
            return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
        }
    }

    private static string Text(double milliseconds) => milliseconds.ToString("0.0", CultureInfo.InvariantCulture) + " ms";
}
