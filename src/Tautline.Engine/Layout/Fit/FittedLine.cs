namespace Tautline.Engine.Layout.Fit;

/// <summary>One bay of a fitted line. Metres, slopes as rise over run.</summary>
/// <param name="Index">Bay i lies between post i and post i + 1.</param>
/// <param name="From">Station of its first post.</param>
/// <param name="To">Station of its second post.</param>
/// <param name="TopFrom">Height of the fabric's top line at its first post.</param>
/// <param name="TopTo">Height of the fabric's top line at its second post.</param>
/// <param name="Plumb">How tall the fabric stands, measured plumb.</param>
/// <param name="LeastGap">Smallest gap under the fabric, negative where the ground stands above its bottom.</param>
/// <param name="MostGap">Largest gap under the fabric.</param>
/// <param name="Cut">By how much the ground is too high at its worst place, zero or above.</param>
/// <param name="Fill">By how much the ground is too low at its worst place, zero or above.</param>
public sealed record FittedBay(
    int Index, double From, double To, double TopFrom, double TopTo, double Plumb, double LeastGap, double MostGap, double Cut, double Fill)
{
    /// <summary>Level length.</summary>
    public double Length => To - From;

    public double Slope => (TopTo - TopFrom) / Length;

    /// <summary>Height of the fabric's bottom at a station of this bay.</summary>
    public double BottomAt(double station)
    {
        var share = (station - From) / Length;
        return (1 - share) * TopFrom + share * TopTo - Plumb;
    }
}

/// <summary>What can hold the top line where it is, or be broken by it.</summary>
public enum FitLimit
{
    /// <summary>The fabric's bottom is down at the least gap somewhere in the bay.</summary>
    LeastGap,

    /// <summary>The fabric's bottom is up at the largest gap somewhere in the bay.</summary>
    MostGap,

    /// <summary>The rail changes its slope at a line post by as much as the fabric rolls over.</summary>
    Bend,

    /// <summary>The bay has the greatest rake.</summary>
    Rake,

    /// <summary>The post uses all of its stock length.</summary>
    PostLength,

    /// <summary>Two pinned tops of one level bay differ (stepped only).</summary>
    Pinned,
}

/// <summary>A limit that is reached; at a post for bend and post length, in a bay for the others.</summary>
public readonly record struct FitBinding(FitLimit Limit, int Index, double Station);

/// <summary>A limit that could not be kept, and by how much: metres, or slope for bend and rake.</summary>
public readonly record struct FitViolation(FitLimit Limit, int Index, double Station, double Amount);

/// <summary>A stretch where the ground as it lies does not suit the fabric.</summary>
/// <param name="From">Station where it begins, metres.</param>
/// <param name="To">Station where it ends.</param>
/// <param name="TooHigh">The ground is too high (cut, trim, bury); otherwise too low (fill, close).</param>
/// <param name="Deepest">Greatest depth, metres.</param>
/// <param name="Area">Area in elevation, square metres.</param>
/// <param name="Volume">Area times the stated width, cubic metres.</param>
/// <param name="Remedy">The first allowed remedy that helps here, or none.</param>
public sealed record Misfit(double From, double To, bool TooHigh, double Deepest, double Area, double Volume, Remedies Remedy);

/// <summary>A fitted line.</summary>
/// <param name="Tops">Height of the top line at each post, metres; where a stepped line steps, the higher of the two.</param>
/// <param name="Excess">By how much each post exceeds its stock length, metres.</param>
/// <param name="Misfits">What is left over, in order of station, the cuts before the fills of a place.</param>
/// <param name="Violations">Limits that could not be kept; empty for a sound fit.</param>
public sealed record FittedLine(
    IReadOnlyList<double> Tops, IReadOnlyList<FittedBay> Bays, IReadOnlyList<double> Excess, IReadOnlyList<FitBinding> Bindings,
    IReadOnlyList<FitViolation> Violations, IReadOnlyList<Misfit> Misfits, FitCertificate Certificate)
{
    /// <summary>Sum over the bays of length times priced cut and fill.</summary>
    public double Cost(FitLimits limits) => Bays.Sum(b => b.Length * (limits.CutCost * b.Cut + limits.FillCost * b.Fill));

    /// <summary>Gap under the fabric above a place of the ground, metres; at a post that of the bay before it.</summary>
    public double Gap(GroundVertex ground) => Bays[BayAt(ground.Station)].BottomAt(ground.Station) - ground.Height;

    private int BayAt(double station)
    {
        var (low, high) = (0, Bays.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Bays[middle].To < station) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
