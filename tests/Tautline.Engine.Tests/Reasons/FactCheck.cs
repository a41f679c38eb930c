using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Reasons;

/// <summary>Holds every figure of a plan against its reasons.</summary>
internal static class FactCheck
{
    /// <summary>Nanometre stations round a measured length by at most half a nanometre at each end.</summary>
    private const double Tolerance = 2e-9;

    public static void All(Plan plan)
    {
        Assert.False(plan.HasErrors);
        var keys = Facts.All(plan).ToList();
        Assert.NotEmpty(keys);
        foreach (var key in keys)
        {
            var stated = Facts.Value(plan, key);
            var why = Facts.Why(plan, key);
            Assert.True(stated is not null && why is not null, $"{key} has no figure or no reason");
            Close(stated.Value, Evaluator.Recompute(why), key);
            foreach (var leaf in WhyTests.Leaves(why)) Holds(plan, leaf, key);
        }
    }

    private static void Holds(Plan plan, Leaf leaf, FactKey of)
    {
        if (leaf.Kind == LeafKind.Known) Close(Facts.Value(plan, leaf.Fact!.Value) ?? double.NaN, leaf.Value, of);
        if (leaf.Kind == LeafKind.Rule) Assert.Contains(plan.Basis.Rules.All, l => l.Key == leaf.Name && l.Value == leaf.Value); // one step of those that have steps
        if (leaf.Kind is LeafKind.Rule or LeafKind.Listed) Assert.False(string.IsNullOrEmpty(leaf.From!.Source), $"{of}: {leaf.Name} has no source");
    }

    private static void Close(double expected, double found, FactKey key)
        => Assert.True(Math.Abs(expected - found) <= Tolerance * Math.Max(1, Math.Abs(expected)), $"{key}: the plan says {expected}, its reasons {found}");
}
