using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests;

/// <summary>Small jobs typed by hand, and what tests plan them with.</summary>
internal static class Some
{
    public static FenceCatalog Catalog { get; } = FenceCatalog.BuiltIn();

    public static Rules Rules { get; } = Rules.BuiltIn();

    public static Plan Plan(Job job, BuiltFacts? built = null) => JobPlanner.Plan(job, Catalog, Rules, built ?? BuiltFacts.None);

    /// <summary>2-in 9-ga fabric on the pipe of the hand counts; no brace.</summary>
    public static Spec Spec(double heightFeet = 6, string id = "fence") => new()
    {
        Id = new(id),
        Name = id,
        Height = Length.FromFeet(heightFeet),
        LinePost = "2.375-sch40",
        TerminalPost = "2.875-sch40",
        RailSection = "1.660-sch40",
        Brace = "no",
    };

    /// <summary>An open or closed line through points given in feet; leg i leaves point i.</summary>
    public static Line Line(string id, bool closed, (double East, double North)[] feet, double[]? grades = null, string spec = "fence")
    {
        var keys = OrderKey.Spread(feet.Length);
        return new Line
        {
            Id = new(id),
            Order = OrderKey.First,
            Name = id,
            Closed = closed,
            Spec = new(spec),
            Vertices = [.. feet.Select((p, i) => new Vertex
            {
                Id = new($"{id}/v{i + 1}"), Order = keys[i], East = Length.FromFeet(p.East), North = Length.FromFeet(p.North),
                Leg = closed || i < feet.Length - 1 ? new Leg { Id = new($"{id}/leg{i + 1}"), Grade = new Slope(grades?[i] ?? 0) } : null,
            })],
        };
    }

    public static Job Job(Line line, params Spec[] specs) => new()
    {
        Id = new("job"),
        Name = "test",
        Specs = specs.Length > 0 ? specs : [Spec()],
        Lines = [line],
    };

    public static Gate Gate(string id, string leg, string kind, double nearFeet, double openingFeet) => new()
    {
        Id = new(id),
        Leg = new(leg),
        Kind = kind,
        NearFace = Length.FromFeet(nearFeet),
        Opening = Length.FromFeet(openingFeet),
    };

    /// <summary>Ten pickets over 14 in: an advance of 1.40.</summary>
    public static RollCalibration Calibration(string spec = "fence") => new() { Spec = new(spec), TenPickets = Length.FromInches(14) };

    /// <summary>Hand count A: 100 ft level, two ends.</summary>
    public static Job StraightHundred(bool calibrated = true)
        => Job(Line("main", false, [(0, 0), (0, 100)])) with { Calibrations = calibrated ? [Calibration()] : [] };

    /// <summary>Hand count B: a level yard with a walk gate and a double gate.</summary>
    public static Job Yard() => Job(Line("yard", true, [(0, 0), (0, 60), (90, 60), (90, 0)])) with
    {
        Gates = [Gate("walk", "yard/leg1", "walk", 20, 4), Gate("drive", "yard/leg3", "double", 30, 16)],
        Calibrations = [Calibration()],
    };

    /// <summary>Hand count C5: 150 ft level measure at 25 %.</summary>
    public static Job Steep() => Job(Line("main", false, [(0, 0), (0, 150)], [0.25])) with { Calibrations = [Calibration()] };

    /// <summary>Hand count C6: two legs, 48 ft rising 15 % and, right, 36 ft falling 8 %.</summary>
    public static Job SlopedLot() => Job(Line("main", false, [(0, 0), (0, 48), (36, 48)], [0.15, -0.08])) with { Calibrations = [Calibration()] };
}
