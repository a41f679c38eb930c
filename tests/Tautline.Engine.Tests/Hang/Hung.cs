using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Hang;

/// <summary>Specs as the stages before the hang settle them, and problems in words.</summary>
internal static class Hung
{
    public static ResolvedSpec Spec(double inches, bool calibrated = false, Func<Spec, Spec>? change = null)
    {
        var spec = change is null ? Some.Spec(inches / 12) : change(Some.Spec(inches / 12));
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 50)]), spec) with { Calibrations = calibrated ? [Some.Calibration()] : [] };
        return Some.Plan(job).Basis.Specs.Single();
    }

    public static Length In(double inches) => Length.FromInches(inches);

    /// <summary>'8 16.5'.</summary>
    public static string Numbers(IEnumerable<double> numbers) => string.Join(' ', numbers.Select(n => n.ToString("0.##", CultureInfo.InvariantCulture)));

    public static string Said(Problem problem)
        => ProblemText.Message(problem, UnitSystem.UsCustomary) + " " + ProblemText.Hint(problem, UnitSystem.UsCustomary);
}
