using System.Text.Json;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Cli.Tests;

/// <summary>Jobs with every field in or out; they need not plan.</summary>
internal static class GenAnyJob
{
    private static readonly Gen<string> genText = Gen.String[0, 12];

    private static readonly Gen<string> genId = Gen.String[Gen.Char["abcxyz0189-/%"], 1, 8];

    private static readonly Gen<Length> genPlace = Gen.Double[-1_000_000, 1_000_000].Select(m => new Length(m));

    private static readonly Gen<Length> genSize = Gen.Double[0.001, 5000].Select(m => new Length(m));

    private static readonly Gen<Dictionary<string, JsonElement>?> genExtra = Gen.Bool.Select(Dictionary<string, JsonElement>? (some) =>
        some ? new() { ["later"] = JsonDocument.Parse("""{ "a": [1, null, "x"] }""").RootElement } : null);

    private static Gen<T> One<T>(params T[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static Gen<T?> Maybe<T>(Gen<T> gen) where T : class => Gen.OneOf(Gen.Const((T?)null), gen.Select(T? (v) => v));

    private static Gen<T?> MaybeValue<T>(Gen<T> gen) where T : struct => Gen.OneOf(Gen.Const((T?)null), gen.Select(T? (v) => v));

    private static readonly Gen<Spec> genSpec = Gen.Select(
        Gen.Select(genId, genText, genSize, MaybeValue(genSize)), Gen.Select(Maybe(One("KK", "KT", "TT")), Maybe(genId), Maybe(genId), Maybe(genId)),
        Gen.Select(One("rail", "wire"), One("wire", "none"), One<string?>(null, "yes", "no")),
        Gen.Select(MaybeValue(Gen.Double[3.048, 152.4].Select(m => new Length(m))), genExtra),
        (a, b, c, d) => new Spec
        {
            Id = new(a.Item1),
            Name = a.Item2,
            Height = a.Item3,
            Mesh = a.Item4,
            Selvage = b.Item1,
            LinePost = b.Item2,
            TerminalPost = b.Item3,
            RailSection = b.Item4,
            Top = c.Item1,
            Bottom = c.Item2,
            Brace = c.Item3,
            Roll = d.Item1,
            Extra = d.Item2,
        });

    private static readonly Gen<Leg> genLeg = Gen.Select(genId, Gen.Double[-1, 1], MaybeValue(genId.Select(i => new SpecId(i))), genExtra)
        .Select(l => new Leg { Id = new(l.Item1), Grade = new Slope(l.Item2), Spec = l.Item3, Extra = l.Item4 });

    private static readonly Gen<Vertex> genVertex = Gen.Select(genId, genPlace, genPlace, Maybe(genLeg), genExtra)
        .Select(v => new Vertex { Id = new(v.Item1), East = v.Item2, North = v.Item3, Leg = v.Item4, Extra = v.Item5 });

    private static readonly Gen<Line> genLine = Gen.Select(genId, genText, Gen.Bool, genId, genVertex.List[0, 5], genExtra, (id, name, closed, spec, vertices, extra) =>
        new Line
        {
            Id = new(id),
            Name = name,
            Closed = closed,
            Spec = new(spec),
            Extra = extra,
            Vertices = [.. vertices.Zip(OrderKey.Spread(vertices.Count), (v, key) => v with { Order = key })],
        });

    private static readonly Gen<Gate> genGate = Gen.Select(genId, genId, One("walk", "double", "slide"), genPlace, genSize, genExtra)
        .Select(g => new Gate { Id = new(g.Item1), Leg = new(g.Item2), Kind = g.Item3, NearFace = g.Item4, Opening = g.Item5, Extra = g.Item6 });

    private static readonly Gen<Obstacle> genObstacle = Gen.Select(Gen.Select(genId, genId, genText), Gen.Select(genSize, genSize, genSize), genText, genExtra)
        .Select(o => new Obstacle
        {
            Id = new(o.Item1.Item1),
            Leg = new(o.Item1.Item2),
            Kind = o.Item1.Item3,
            From = o.Item2.Item1,
            To = o.Item2.Item2,
            Clearance = o.Item2.Item3,
            Note = o.Item3,
            Extra = o.Item4,
        });

    private static readonly Gen<RuleOverride> genOverride = Gen.Select(genId, Gen.Double[0.001, 1000], genText, genExtra)
        .Select(r => new RuleOverride { Rule = r.Item1, Value = r.Item2, Source = r.Item3, Extra = r.Item4 });

    private static readonly Gen<CoordinateFrame> genFrame = Gen.Select(genText, Gen.Double[-1e7, 1e7], Gen.Double[-1e7, 1e7], Gen.Double[0.9, 1.1], genExtra)
        .Select(f => new CoordinateFrame { System = f.Item1, OriginEast = f.Item2, OriginNorth = f.Item3, GroundScale = f.Item4, Extra = f.Item5 });

    private static readonly Gen<RollCalibration> genCalibration = Gen.Select(genId, genSize, genExtra)
        .Select(c => new RollCalibration { Spec = new(c.Item1), TenPickets = c.Item2, Extra = c.Item3 });

    public static Gen<Job> Any { get; } = Gen.Select(
        Gen.Select(genId, genText, Gen.Bool, Maybe(genFrame), genExtra), Gen.Select(genOverride.List[0, 2], genSpec.List[0, 3], genLine.List[0, 3]),
        Gen.Select(genGate.List[0, 2], genObstacle.List[0, 2], genCalibration.List[0, 2]),
        (a, b, c) => new Job
        {
            Id = new(a.Item1),
            Name = a.Item2,
            Units = a.Item3 ? UnitSystem.Metric : UnitSystem.UsCustomary,
            Coordinates = a.Item4,
            Extra = a.Item5,
            AsSpecified = b.Item1,
            Specs = b.Item2,
            Gates = c.Item1,
            Obstacles = c.Item2,
            Calibrations = c.Item3,
            Lines = b.Item3.Count == 1 ? b.Item3 : [.. b.Item3.Zip(OrderKey.Spread(b.Item3.Count), (l, key) => l with { Order = key })],
        });
}
