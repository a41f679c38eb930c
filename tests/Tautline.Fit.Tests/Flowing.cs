using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>The last phase's sum written down once more: changes of slope at line posts, and deviations from the wanted gap.</summary>
internal sealed class Flowing(FitInput input, IReadOnlyList<FittedBay> bays)
{
    // The weights docs/ground-fit.md states.
    private readonly double weight = input.Mode == FitMode.Follow ? 100 : 0.001;

    public double Value(IReadOnlyList<double> tops)
    {
        var sum = 0.0;
        for (var i = 0; i < tops.Count; i++)
        {
            if (input.Posts[i].Pinned is null) sum += weight * Deviation(tops, i) * Deviation(tops, i);
            if (Through(i)) sum += Bend(tops, i) * Bend(tops, i);
        }
        return sum;
    }

    public double[] Gradient(IReadOnlyList<double> tops)
    {
        var gradient = new double[tops.Count];
        for (var i = 0; i < tops.Count; i++)
        {
            if (input.Posts[i].Pinned is null) gradient[i] += 2 * weight * Deviation(tops, i);
            if (!Through(i)) continue;
            var bend = 2 * Bend(tops, i);
            gradient[i - 1] += bend / bays[i - 1].Length;
            gradient[i] -= bend / bays[i - 1].Length + bend / bays[i].Length;
            gradient[i + 1] += bend / bays[i].Length;
        }
        return gradient;
    }

    private bool Through(int i) => i > 0 && i < input.Posts.Count - 1 && !input.Posts[i].Terminal;

    private double Bend(IReadOnlyList<double> tops, int i) => (tops[i + 1] - tops[i]) / bays[i].Length - (tops[i] - tops[i - 1]) / bays[i - 1].Length;

    private double Deviation(IReadOnlyList<double> tops, int i)
    {
        var plumb = i == 0 ? bays[0].Plumb : i == bays.Count ? bays[^1].Plumb : (bays[i - 1].Plumb + bays[i].Plumb) / 2;
        return tops[i] - plumb - Grounds.At(input.Ground, input.Posts[i].Station) - input.Limits.WantedGap;
    }
}
