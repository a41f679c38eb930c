namespace Tautline.Engine.Layout.Fit;

/// <summary>Rows whose two bounds are one number: kept by a multiplier of either sign that grows with what is still missing.</summary>
internal sealed class RigidRows
{
    // So heavy that a step leaves only a billionth of the multiplier's change missing; the next steps take that away too.
    private const double Weight = 1e9;

    private readonly int[] row;
    private readonly double[] aim;
    private readonly double[] force;
    private readonly double[] forceMove;

    public RigidRows(ChainArrays chain, ChainRows rows)
    {
        row = [.. Enumerable.Range(0, rows.Count).Where(r => chain.Low[rows.Source[r]] == chain.High[rows.Source[r]])];
        aim = [.. row.Select(r => chain.Low[rows.Source[r]])];
        (force, forceMove) = (new double[row.Length], new double[row.Length]);
    }

    /// <summary>Largest distance of a row from its aim.</summary>
    public double Residual(double[] z)
    {
        var residual = 0.0;
        for (var j = 0; j < row.Length; j++) residual = Math.Max(residual, Math.Abs(z[row[j]] - aim[j]));
        return residual;
    }

    public void AddForces(double[] forces)
    {
        for (var j = 0; j < row.Length; j++) forces[row[j]] += force[j];
    }

    public void AddWeights(double[] weight)
    {
        for (var j = 0; j < row.Length; j++) weight[row[j]] = Weight;
    }

    public void AddPushes(double[] z, double[] push)
    {
        for (var j = 0; j < row.Length; j++) push[row[j]] += Weight * (aim[j] - z[row[j]]);
    }

    public void Direct(double[] z, double[] move)
    {
        for (var j = 0; j < row.Length; j++) forceMove[j] = Weight * (aim[j] - z[row[j]] - move[row[j]]);
    }

    public void Move(double dual)
    {
        for (var j = 0; j < row.Length; j++) force[j] += dual * forceMove[j];
    }
}
