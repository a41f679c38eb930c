using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>'An 8-ft fence' with barb: 7 + 1, or 8 + 1? The job says; until it does the height is taken as the fabric's.</summary>
internal static class SpecHeight
{
    public static Length Fabric(Spec spec, Rules rules, string path, ProblemList problems)
    {
        if (spec.Barb is not { } barb) return spec.Height;
        var foot = rules.BarbHeight.Length;
        if (barb.HeightIs is null) problems.Add(ProblemCode.BarbHeightQuestion, new($"{path}.barb.heightIs"), spec.Height, spec.Height - foot);
        var strands = barb.Lean == "both" ? 6 : 3;
        if (barb.Strands != strands) problems.Add(ProblemCode.BarbStrands, new($"{path}.barb.strands"), barb.Strands, strands);
        return barb.HeightIs == "overall" ? spec.Height - foot : spec.Height;
    }
}
