using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>What a plan takes of the three things a job is sized by, summed over the lines of its take-off.</summary>
/// <param name="Fabric">As hung, of all kinds and widths.</param>
/// <param name="Concrete">In the holes.</param>
/// <param name="Mass">Of everything the catalogue has a weight for.</param>
public sealed record PlanAmounts(Length Fabric, Volume Concrete, Mass Mass)
{
    public static PlanAmounts Of(Plan plan) => new(
        new(Net(plan, "fabric")), new(Net(plan, "concrete-bag")), new(plan.Takeoff.Sum(t => t.Mass?.Kilograms ?? 0)));

    private static double Net(Plan plan, string part) => plan.Takeoff.Where(t => t.Part == part).Sum((TakeoffLine t) => t.Net);
}
