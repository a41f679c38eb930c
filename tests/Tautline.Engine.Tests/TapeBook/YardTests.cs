using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Engine.Tests.TapeBook;

public sealed class YardTests
{
    /// <summary>Hand count B (docs/checks/first-light.md): 60 by 90 ft, a walk gate and a double gate.</summary>
    private const string Book = """
        job test
        spec fence height 6' line-post 2.375-sch40 terminal-post 2.875-sch40 rail 1.660-sch40 brace no
        ten pickets 14"
        line yard
        leg 60'
        gate walk 4' from 20'
        R 90
        leg 90'
        R 90
        leg 60'
        gate double 16' centred at 38'
        R 90
        leg 90'
        close
        """;

    [Fact]
    public void YardTypedInFourteenLinesPlansLikeTheJobTypedByHand()
    {
        var byHand = Some.Yard() with
        {
            Id = new("job/test"),
            Specs = [Some.Spec(id: "spec/fence")],
            Calibrations = [Some.Calibration("spec/fence")],
            Gates = [Some.Gate("yard/gate1", "yard/leg1", "walk", 20, 4), Some.Gate("yard/gate2", "yard/leg3", "double", 30, 16)],
            Lines = [Some.Yard().Lines[0] with { Spec = new("spec/fence") }],
        };
        Assert.Equal(PlanFile.Hash(Some.Plan(byHand)), PlanFile.Hash(Books.Plan(Book)));
    }

    [Fact]
    public void YardHasTheHandCountsNumbers()
    {
        var plan = Books.Plan(Book);
        var line = Assert.Single(plan.Lines);
        Assert.Equal(3600, line.Level.Inches, 6);
        Assert.Equal([238.5625, 430.5625, 1080, 358.5625, 166.5625, 1080], line.Runs.Select(r => Math.Round(r.Along.Inches, 6)));
        Assert.Equal(31, line.Posts.Count); // 8 terminals, 23 line posts
        Assert.Equal(14, plan.Takeoff.Single(t => t.Part == "rail").Purchase); // sticks
        Assert.Equal(6, plan.Takeoff.Single(t => t.Part == "fabric").Purchase); // rolls
    }
}
