using Google.OrTools.LinearSolver;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>
/// The first two phases written down once more for a general solver, on every raw ground vertex, with the plumb heights the fit held.
/// The solver counts heights from the ground at the first post and sums in thousandths: its tolerance is absolute.
/// </summary>
internal sealed class RawProgram
{
    private const double Thousand = 1000;

    private readonly FitInput input;
    private readonly IReadOnlyList<FittedBay> bays;
    private readonly Solver solver = Solver.CreateSolver("GLOP");
    private readonly double datum;
    private readonly Variable[] tops;
    private readonly Variable[] cut;
    private readonly Variable[] fill;
    private readonly Variable[] excess;

    public RawProgram(FitInput input, IReadOnlyList<FittedBay> bays)
    {
        (this.input, this.bays, datum) = (input, bays, input.Ground[0].Height);
        tops = [.. input.Posts.Select((p, i) => solver.MakeNumVar((p.Pinned ?? -1e5) - datum, (p.Pinned ?? 1e5) - datum, $"t{i}"))];
        cut = [.. bays.Select(b => solver.MakeNumVar(0, double.PositiveInfinity, $"u{b.Index}"))];
        fill = [.. bays.Select(b => solver.MakeNumVar(0, double.PositiveInfinity, $"v{b.Index}"))];
        excess = [.. input.Posts.Select((_, i) => solver.MakeNumVar(0, double.PositiveInfinity, $"e{i}"))];
        foreach (var bay in bays) AddBay(bay);
        for (var i = 0; i < tops.Length; i++) AddPost(i);
    }

    /// <summary>Least priced cut and fill.</summary>
    public double Grading()
    {
        foreach (var bay in bays) Price(bay, solver.Objective().SetCoefficient);
        return Minimum();
    }

    /// <summary>Least post length over stock among lines that cost no more than stated.</summary>
    public double PostLength(double most)
    {
        var row = solver.MakeConstraint(double.NegativeInfinity, Thousand * most);
        foreach (var bay in bays) Price(bay, (slack, price) => row.SetCoefficient(slack, Thousand * price));
        solver.Objective().Clear();
        foreach (var e in excess) solver.Objective().SetCoefficient(e, 1);
        var least = Minimum();
        row.SetUb(double.PositiveInfinity);
        return least;
    }

    /// <summary>
    /// By how much the flow could still be better among lines that cost and exceed no more than stated: the flow is convex, so no
    /// line lies below its tangent plane, and the plane's minimum is a linear program.
    /// </summary>
    public double FlowGap(double[] gradient, IReadOnlyList<double> at, double cost, double over)
    {
        var row = solver.MakeConstraint(double.NegativeInfinity, Thousand * cost);
        foreach (var bay in bays) Price(bay, (slack, price) => row.SetCoefficient(slack, Thousand * price));
        var posts = solver.MakeConstraint(double.NegativeInfinity, Thousand * over);
        foreach (var e in excess) posts.SetCoefficient(e, Thousand);
        solver.Objective().Clear();
        for (var i = 0; i < tops.Length; i++) solver.Objective().SetCoefficient(tops[i], gradient[i]);
        return at.Select((t, i) => gradient[i] * (t - datum)).Sum() - Minimum();
    }

    private double Minimum()
    {
        solver.Objective().SetMinimization();
        // Its ways of solving stumble over different programs at a tolerance this small, or go round in circles until the time is up (ten
        // seconds for what takes milliseconds); an answer by any of them will do.
        solver.SetTimeLimit(10_000);
        var status = Solver.ResultStatus.NOT_SOLVED;
        for (var way = 0; way < 8 && status != Solver.ResultStatus.OPTIMAL; way++) status = solver.Solve(Way(way));
        Assert.Equal(Solver.ResultStatus.OPTIMAL, status);
        return solver.Objective().Value();
    }

    private static MPSolverParameters Way(int way)
    {
        var parameters = new MPSolverParameters();
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.PRIMAL_TOLERANCE, way < 4 ? 1e-9 : 1e-8);
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.DUAL_TOLERANCE, way < 4 ? 1e-9 : 1e-8);
        parameters.SetIntegerParam(MPSolverParameters.IntegerParam.PRESOLVE, way % 2 == 0 ? 1 : 0);
        parameters.SetIntegerParam(MPSolverParameters.IntegerParam.LP_ALGORITHM, way % 4 < 2 ? 10 : 11);
        return parameters;
    }

    private void Price(FittedBay bay, Action<Variable, double> set)
    {
        set(cut[bay.Index], bay.Length * input.Limits.CutCost);
        set(fill[bay.Index], bay.Length * input.Limits.FillCost);
    }

    private void AddBay(FittedBay bay)
    {
        foreach (var (station, height) in Grounds.Under(input.Ground, bay.From, bay.To))
        {
            var share = (station - bay.From) / bay.Length;
            var least = solver.MakeConstraint(height - datum + input.Limits.LeastGap + bay.Plumb, double.PositiveInfinity);
            Top(least, bay.Index, share);
            least.SetCoefficient(cut[bay.Index], 1);
            var most = solver.MakeConstraint(double.NegativeInfinity, height - datum + input.Limits.MostGap + bay.Plumb);
            Top(most, bay.Index, share);
            most.SetCoefficient(fill[bay.Index], -1);
        }
        var rake = solver.MakeConstraint(-input.Limits.GreatestRake * bay.Length, input.Limits.GreatestRake * bay.Length);
        rake.SetCoefficient(tops[bay.Index], -1);
        rake.SetCoefficient(tops[bay.Index + 1], 1);
    }

    private void Top(Constraint row, int bay, double share)
    {
        row.SetCoefficient(tops[bay], 1 - share);
        row.SetCoefficient(tops[bay + 1], share);
    }

    private void AddPost(int i)
    {
        var post = input.Posts[i];
        if (double.IsFinite(post.LongestAbove))
        {
            var row = solver.MakeConstraint(double.NegativeInfinity, Grounds.At(input.Ground, post.Station) - datum + post.LongestAbove);
            row.SetCoefficient(tops[i], 1);
            row.SetCoefficient(excess[i], -1);
        }
        if (post.Terminal || i == 0 || i == tops.Length - 1) return;
        var (before, after) = (1 / bays[i - 1].Length, 1 / bays[i].Length);
        var bend = solver.MakeConstraint(-input.Limits.GreatestBend, input.Limits.GreatestBend);
        bend.SetCoefficient(tops[i - 1], before);
        bend.SetCoefficient(tops[i], -before - after);
        bend.SetCoefficient(tops[i + 1], after);
    }
}
