using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests;

/// <summary>Random jobs that plan: walked lines with turns, grades, gates and no-dig stretches.</summary>
internal static class GenJob
{
    private static readonly Gen<(double Length, double Turn, double Grade)> genLeg =
        Gen.Select(Gen.Double[8, 300], Gen.Double[-120, 120], Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.4, 0.4]));

    private static readonly Gen<Spec> genSpec = Gen.Select(Gen.Int[0, 6].Select(i => new[] { 4.0, 5, 6, 7, 8, 10, 12 }[i]), Gen.Bool, Gen.Bool, Gen.Bool)
        .Select((feet, rail, wire, brace) => new Spec
        {
            Id = new("fence"),
            Height = Length.FromFeet(feet),
            Top = rail ? "rail" : "wire",
            Bottom = wire ? "wire" : "none",
            Brace = brace ? "yes" : "no",
        });

    public static Gen<Job> Any { get; } = Gen.Select(genLeg.List[1, 8], genSpec, Gen.Bool, Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool)
        .Select(Make);

    private static Job Make(List<(double Length, double Turn, double Grade)> legs, Spec spec, bool gate, double gateAt, double zoneAt, bool calibrated)
    {
        var points = Walk(legs);
        var job = Some.Job(Some.Line("main", false, points, [.. legs.Select(l => l.Grade)]), spec);
        var longest = legs.FindIndex(l => l.Length == legs.Max(m => m.Length)) + 1;
        var length = legs[longest - 1].Length;
        return job with
        {
            Gates = gate && length > 12 ? [Some.Gate("gate", $"main/leg{longest}", "walk", 1 + gateAt * (length - 7), 4)] : [],
            Obstacles = [new Obstacle
            {
                Id = new("zone"), Leg = new("main/leg1"), Kind = Obstacle.NoDig, From = Length.FromFeet(zoneAt * (legs[0].Length - 4)),
                To = Length.FromFeet(zoneAt * (legs[0].Length - 4) + 3), Clearance = Length.FromFeet(0.5),
            }],
            Calibrations = calibrated ? [Some.Calibration()] : [],
        };
    }

    private static (double, double)[] Walk(List<(double Length, double Turn, double Grade)> legs)
    {
        var (east, north, heading) = (0.0, 0.0, 0.0);
        List<(double, double)> points = [(0, 0)];
        foreach (var leg in legs)
        {
            heading += leg.Turn * Math.PI / 180;
            (east, north) = (east + leg.Length * Math.Sin(heading), north + leg.Length * Math.Cos(heading));
            points.Add((east, north));
        }
        return [.. points];
    }
}
