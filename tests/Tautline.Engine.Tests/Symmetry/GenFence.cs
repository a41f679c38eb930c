using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>
/// Random jobs that say everything a job can say of one line: turns, grades, arcs, two specs, gates of each kind up to the
/// corners, no-dig stretches, slabs, rock, tie-ins, barbed wire, open and closed. Most plan; some are refused.
/// </summary>
internal static class GenFence
{
    private sealed record Walked(
        double Feet, double Turn, double Grade, bool OtherSpec, (double Radii, string Hand)? Curve, (string Kind, double Opening, double At, string Back)? Gate,
        (string Kind, double At, double Part, double Clear, string? Support)? Stretch);

    private static Gen<T> One<T>(params T[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static Gen<T?> Sometimes<T>(int oneIn, Gen<T> gen) where T : struct
        => Gen.Select(Gen.Int[1, oneIn], gen, (n, some) => n == 1 ? some : (T?)null);

    /// <summary>Along a leg: at its ends as often as between them.</summary>
    private static readonly Gen<double> genPart = Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[0, 1], Gen.Double[0, 1]);

    private static readonly Gen<Walked> genLeg = Gen.Select(
        Gen.Double[9, 160], Gen.OneOf(Gen.Const(0.0), Gen.Double[-4, 4], Gen.Double[-120, 120]), Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.3, 0.3]),
        Gen.Int[0, 3].Select(n => n == 0), Sometimes(6, Gen.Select(Gen.Double[0.6, 3], One("left", "right"))),
        Sometimes(3, Gen.Select(One("walk", "walk", "double", "cantilever"), Gen.Double[4, 14], genPart, One("start", "end"))),
        Sometimes(3, Gen.Select(One("no-dig", "no-dig", "slab", "rock"), genPart, Gen.Double[0.02, 0.5], Gen.Double[0, 3], One<string?>(null, "cored", "plated"))),
        (feet, turn, grade, other, curve, gate, stretch) => new Walked(feet, turn, grade, other, curve, gate, stretch));

    private static readonly Gen<Spec> genSpec = Gen.Select(
        One(4.0, 5, 6, 7, 8), Gen.Select(One("rail", "wire"), One("wire", "none", "rail"), One<string?>(null, "rail"), One("yes", "no")),
        One<(string?, string?)>((null, null), ("2.375-sch40", "2.875-sch40"), ("2.375-ic", "2.875-ic"), ("1.900-sch40", "2.875-sch40"), ("2.375-sch40", "4.000-sch40")),
        One<(int, string)?>(null, null, (3, "left"), (3, "right"), (3, "up"), (6, "both")),
        Gen.Select(One<string?>(null, null, "driven", "cored", "plated"), One<string?>(null, null, "cored", "plated")),
        (feet, rails, posts, barb, supports) => new Spec
        {
            Id = new("fence"),
            Height = Length.FromFeet(feet),
            Top = rails.Item1,
            Bottom = rails.Item2,
            Middle = rails.Item3,
            Brace = rails.Item4,
            LinePost = posts.Item1,
            TerminalPost = posts.Item2,
            LineSupport = supports.Item1,
            TerminalSupport = supports.Item2,
            Barb = barb is var (strands, lean) ? new Barb { Strands = strands, Lean = lean, HeightIs = "fabric" } : null,
        });

    private static readonly Gen<TieIn?> genTie = One<TieIn?>(
        null, null, new TieIn { Kind = "building" }, new TieIn { Kind = "fence", Section = "2.875-sch40" }, new TieIn { Kind = "fence", Section = "2.375-sch40" });

    public static Gen<Job> Any { get; } = Gen.Select(genLeg.List[1, 7], genSpec, genSpec, Gen.Bool, genTie, genTie, Gen.Bool)
        .Select((legs, spec, other, closed, start, finish, calibrated) => Make(legs, spec, other with { Id = new("other") }, closed, (start, finish), calibrated));

    private static Job Make(List<Walked> legs, Spec spec, Spec other, bool closed, (TieIn? Start, TieIn? Finish) ties, bool calibrated)
    {
        var points = Walk(legs);
        closed &= legs.Count > 2 && Math.Sqrt(points[^1].Item1 * points[^1].Item1 + points[^1].Item2 * points[^1].Item2) > 9;
        var line = Some.Line("main", closed, points, [.. legs.Select(l => l.Grade), 0]);
        var vertices = line.Vertices.Select((v, i) => i < legs.Count ? v with { Leg = LegOf(v.Leg!, legs[i]) } : v);
        return Some.Job(line with { Vertices = [.. vertices], Start = closed ? null : ties.Start, Finish = closed ? null : ties.Finish }, spec, other) with
        {
            Gates = [.. legs.Select(GateOf).OfType<Gate>()],
            Obstacles = [.. legs.Select(StretchOf).OfType<Obstacle>()],
            Calibrations = calibrated ? [Some.Calibration(), Some.Calibration("other")] : [],
        };
    }

    private static Leg LegOf(Leg leg, Walked walked) => leg with
    {
        Spec = walked.OtherSpec ? new SpecId("other") : null,
        Curve = walked.Curve is var (radii, hand) ? new LegCurve { Radius = Length.FromFeet(walked.Feet * radii), Bends = hand } : null,
    };

    private static Gate? GateOf(Walked leg, int i)
        => leg.Gate is not var (kind, opening, at, back) || leg.Curve is not null || opening + 1 > leg.Feet ? null
            : Some.Gate($"gate{i}", $"main/leg{i + 1}", kind, at * (leg.Feet - opening), opening) with { RunsBack = kind == "cantilever" ? back : null };

    /// <summary>
    /// Some part of a leg, but no plain fraction of it: a post that divides a run evenly would stand on the very edge of a slab, and
    /// the nanometre it is rounded to, from the one end or the other, would decide whether it is cored.
    /// </summary>
    private static Obstacle? StretchOf(Walked leg, int i) => leg.Stretch is not var (kind, at, part, clear, support) ? null : new Obstacle
    {
        Id = new($"stretch{i}"),
        Leg = new($"main/leg{i + 1}"),
        Kind = kind,
        From = Length.FromFeet(at * leg.Feet * (1 - part * 0.98718)),
        To = Length.FromFeet(at * leg.Feet * (1 - part * 0.98718) + part * 0.98718 * leg.Feet),
        Clearance = Length.FromFeet(clear),
        Support = kind == "no-dig" ? null : support,
    };

    private static (double, double)[] Walk(List<Walked> legs)
    {
        var (east, north, heading) = (0.0, 0.0, 0.0);
        List<(double, double)> points = [(0, 0)];
        foreach (var leg in legs)
        {
            heading += leg.Turn * Math.PI / 180;
            (east, north) = (east + leg.Feet * Math.Sin(heading), north + leg.Feet * Math.Cos(heading));
            points.Add((east, north));
        }
        return [.. points];
    }
}
