namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The plumb heights a fit holds during a pass, and how they are taken anew after it. Mostly what a pass finds is right at once or after a few
/// secant steps, bay by bay. Where bays pull each other along or push each other away that does not end; then every bay takes longer
/// steps as long as it misses on one side, and much shorter ones each time it has gone too far. And where that does not end either all
/// begin again, with smaller steps, from bays that are level, and at last from bays as steep as they may be.
/// </summary>
internal sealed class PlumbHeights
{
    public const int MostPasses = 150;

    private const int Round = 50;
    private const int Secants = 12;
    private const double LeastShare = 0.15;

    private const double Longer = 1.6;
    private const double Shorter = 0.4;
    private const double Shortest = 1e-6;
    private const double Longest = 12;

    private readonly double[] last;
    private readonly double[] lastOff;
    private readonly double[] reach;
    private readonly double level;
    private readonly double steep;
    private int passes;
    private double most = 1;

    /// <param name="level">How tall the fabric stands in a level bay.</param>
    /// <param name="steep">How tall it stands in the steepest bay there may be.</param>
    public PlumbHeights(double[] first, double level, double steep)
    {
        (this.level, this.steep) = (level, steep);
        (Held, last, lastOff, reach) = (first, new double[first.Length], new double[first.Length], new double[first.Length]);
        Array.Fill(reach, 1);
    }

    public double[] Held { get; }

    /// <summary>Largest difference between what is held and what a pass found, metres.</summary>
    public double Off(double[] found)
    {
        var off = 0.0;
        for (var i = 0; i < found.Length; i++) off = Math.Max(off, Math.Abs(found[i] - Held[i]));
        return off;
    }

    /// <summary>Moves on towards what a pass found.</summary>
    public void Take(double[] found)
    {
        if (++passes % Round == 0) Restart(passes == Round ? level : steep);
        else for (var i = 0; i < found.Length; i++) Take(i, found[i] - Held[i]);
    }

    private void Restart(double height)
    {
        most = 0.3;
        Array.Fill(Held, height);
        Array.Fill(reach, most);
        Array.Clear(lastOff);
    }

    private void Take(int i, double off)
    {
        var share = passes % Round > Secants ? Pace(i, off) : lastOff[i] == 0 ? most : Secant(Held[i] - last[i], off - lastOff[i]);
        (last[i], lastOff[i]) = (Held[i], off);
        Held[i] += share * off;
    }

    private double Secant(double moved, double changed) => moved * changed < 0 ? Math.Clamp(-moved / changed, LeastShare, most) : most;

    private double Pace(int i, double off)
        => reach[i] = off * lastOff[i] > 0 ? Math.Min(Longest, Longer * reach[i]) : Math.Max(Shortest, Shorter * reach[i]);
}
