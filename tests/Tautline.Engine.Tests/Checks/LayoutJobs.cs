using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Checks;

/// <summary>The jobs of docs/checks/layout.md, typed by hand.</summary>
internal static class LayoutJobs
{
    /// <summary>D: 120 ft north, an arc to the right of 150 ft radius and 90 degrees, 100 ft east with a cantilever gate.</summary>
    public static Job CornerLot(string runsBack = "end")
    {
        var line = Some.Line("lot", false, [(0, 0), (0, 120), (150, 270), (250, 270)]);
        var arc = line.Vertices[1] with
        {
            Leg = line.Vertices[1].Leg! with { Curve = new LegCurve { Radius = Length.FromFeet(150), Bends = "right" } },
        };
        return Some.Job(line with { Vertices = [line.Vertices[0], arc, line.Vertices[2], line.Vertices[3]] }) with
        {
            Gates = [Some.Gate("drive", "lot/leg3", "cantilever", 30, 20) with { RunsBack = runsBack }],
            Calibrations = [Some.Calibration()],
        };
    }

    /// <summary>E: a backstop of two laced 6-ft widths, 40 ft straight and 20 ft at 45 degrees to the right.</summary>
    public static Job Backstop()
    {
        var side = 20 * Math.Sqrt(0.5);
        var spec = Some.Spec(12) with { Laced = 2, Middle = "rail", Brace = "yes", LinePost = "2.875-sch40", TerminalPost = "4.000-sch40" };
        return Some.Job(Some.Line("stop", false, [(0, 0), (0, 40), (side, 40 + side)]), spec) with { Calibrations = [Some.Calibration()] };
    }

    /// <summary>F: from a building 50 ft of 6 ft, then 40 ft of 4 ft to a standing 2.375 post.</summary>
    public static Job StepDown() => Step(6, 4, 50, 40) with
    {
        Lines = [Step(6, 4, 50, 40).Lines[0] with
        {
            Start = new TieIn { Kind = TieIn.Building },
            Finish = new TieIn { Kind = TieIn.Fence, Section = "2.375-sch40" },
        }],
    };

    /// <summary>F11: 8 ft to 4 ft at one post.</summary>
    public static Job EightToFour() => Step(8, 4, 50, 40);

    /// <summary>G: 330 + 330 ft of 7-ft fabric with three strands leaning out of a 90-degree corner to the right.</summary>
    public static Job Barbed(string lean = "left", int strands = 3, double turn = 90)
    {
        var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
        var spec = Some.Spec(7) with { Barb = new Barb { Strands = strands, Lean = lean, HeightIs = "fabric" } };
        return Some.Job(Some.Line("wire", false, [(0, 0), (0, 330), (330 * sin, 330 + 330 * cos)]), spec) with { Calibrations = [Some.Calibration()] };
    }

    /// <summary>H: one arc of 90 degrees to the right.</summary>
    public static Job Arc(double radiusFeet)
    {
        var line = Some.Line("arc", false, [(0, 0), (radiusFeet, radiusFeet)]);
        var leg = line.Vertices[0].Leg! with { Curve = new LegCurve { Radius = Length.FromFeet(radiusFeet), Bends = "right" } };
        return Some.Job(line with { Vertices = [line.Vertices[0] with { Leg = leg }, line.Vertices[1]] }) with
        {
            AsSpecified = [new RuleOverride { Rule = "run.max", Value = 1000 }], // one run, whatever its length
        };
    }

    private static Job Step(double first, double second, double firstFeet, double secondFeet)
    {
        var line = Some.Line("line", false, [(0, 0), (0, firstFeet), (0, firstFeet + secondFeet)], spec: "high");
        var lower = line.Vertices[1] with { Leg = line.Vertices[1].Leg! with { Spec = new SpecId("low") } };
        Spec[] specs = [Some.Spec(first, "high"), Some.Spec(second, "low")];
        return Some.Job(line with { Vertices = [line.Vertices[0], lower, line.Vertices[2]] }, specs) with
        {
            Calibrations = [Some.Calibration("high"), Some.Calibration("low")],
        };
    }
}
