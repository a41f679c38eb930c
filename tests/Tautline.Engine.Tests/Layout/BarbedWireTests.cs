using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Tests.Symmetry;

namespace Tautline.Engine.Tests.Layout;

public sealed class BarbedWireTests
{
    /// <summary>60 ft out and 20 ft back on the same ground: 3 strands, no mitre, 240 ft.</summary>
    [Fact]
    public void ALineThatDoublesBackEndsItsBarbedWireAtThePost()
    {
        var job = Some.Job(
            Some.Line("main", false, [(0, 0), (0, 60), (0, 40)]), Some.Spec() with { Barb = new Barb { Strands = 3, Lean = "left", HeightIs = "fabric" } });
        Assert.All(EitherWay.Plans(job), p => Assert.Equal(240, new Length(EitherWay.Net(p, "barbed-wire")).Feet, 6));
    }
}
