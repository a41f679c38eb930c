using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>A job to begin with, and ids for it that no other job has.</summary>
public static class NewJob
{
    /// <summary>What is planned until somebody says otherwise.</summary>
    public static Spec UsualSpec => new() { Id = new("fence"), Name = "", Height = Length.FromFeet(6), Brace = "no" };

    public static Job Empty(string name, UnitSystem units) => new() { Id = FreshId(), Name = name, Units = units, Specs = [UsualSpec] };

    /// <summary>The same job as one of its own: the shelf then keeps both.</summary>
    public static Job Copy(Job job, string name) => job with { Id = FreshId(), Name = name };

    public static JobId FreshId() => new("job-" + Guid.NewGuid().ToString("n")[..12]);
}
