using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>A job planned as it is entered and walked from its other end.</summary>
internal static class EitherWay
{
    public static Plan[] Plans(Job job)
    {
        var plan = Some.Plan(job);
        return [plan, Some.Plan(Turned.Reversed(job, Turned.Levels(plan)))];
    }

    public static double Net(Plan plan, string part, string? section = null)
        => plan.Takeoff.Where(t => t.Part == part && (section is null || t.Section == section)).Sum(t => t.Net);
}
