namespace Tautline.Engine.Layout.Fit;

/// <summary>Rows whose two bounds are one number: kept by a multiplier of either sign that grows with what is still missing.</summary>
internal sealed class RigidRows
{
    // So heavy that a step leaves only a billionth of the multiplier's change missing; the next steps take that away too.
    private const double Weight = 1e9;

    private readonly int[] row;
    private readonly double[] aim;
    private readonly double[] missing;
    private readonly double[] force;
    private readonly double[] forceMove;

    public RigidRows(ChainArrays chain, ChainRows rows)
    {
        List<int> rigid = [];
        for (var r = 0; r < rows.Count; r++)
            if (chain.Low[rows.Source[r]] == chain.High[rows.Source[r]]) rigid.Add(r);
        row = [.. rigid];
        aim = [.. row.Select(r => chain.Low[rows.Source[r]])];
        (missing, force, forceMove) = (new double[row.Length], new double[row.Length], new double[row.Length]);
    }

    public void Begin(double[] z)
    {
        for (var j = 0; j < row.Length; j++) missing[j] = aim[j] - z[row[j]];
    }

    public double Residual()
    {
        var residual = 0.0;
        foreach (var one in missing) residual = Math.Max(residual, Math.Abs(one));
        return residual;
    }

    /// <summary>Largest distance of a row from its aim, read anew.</summary>
    public double Breach(double[] z)
    {
        var breach = 0.0;
        for (var j = 0; j < row.Length; j++) breach = Math.Max(breach, Math.Abs(z[row[j]] - aim[j]));
        return breach;
    }

    public void AddForces(double[] forces)
    {
        for (var j = 0; j < row.Length; j++) forces[row[j]] += force[j];
    }

    public void AddWeights(double[] weight)
    {
        for (var j = 0; j < row.Length; j++) weight[row[j]] = Weight;
    }

    public void AddPushes(double[] push)
    {
        for (var j = 0; j < row.Length; j++) push[row[j]] += Weight * missing[j];
    }

    public void Direct(double[] move)
    {
        for (var j = 0; j < row.Length; j++) forceMove[j] = Weight * (missing[j] - move[row[j]]);
    }

    public void Move(double primal, double dual, double[] move)
    {
        for (var j = 0; j < row.Length; j++)
        {
            force[j] += dual * forceMove[j];
            missing[j] -= primal * move[row[j]];
        }
    }
}
