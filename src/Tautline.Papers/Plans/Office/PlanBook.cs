using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Office;

/// <summary>Take-off, posts, runs with their cuts, and gates as tables with real numbers, in the paper's language and units.</summary>
public static class PlanBook
{
    public static SheetBook Of(Plan plan, PaperChoice choice)
    {
        var say = new PaperSay(choice);
        var u = new Units(choice.Units);
        return new([Takeoff(plan, say, u), Posts(plan, say, u), Runs(plan, say, u), Cuts(plan, say, u), Gates(plan, say, u)]);
    }

    private sealed record Units(UnitSystem System)
    {
        private bool Metric => System == UnitSystem.Metric;

        public string Long => Metric ? "m" : "ft";

        public string Short => Metric ? "mm" : "in";

        public string Volume => Metric ? "m³" : "ft³";

        public string Area => Metric ? "m²" : "ft²";

        public string Mass => Metric ? "kg" : "lb";

        public double InLong(Length length) => Metric ? length.Metres : length.Feet;

        public double InShort(Length length) => Metric ? length.Metres * 1000 : length.Feet * 12;

        public double InVolume(Volume volume) => Metric ? volume.CubicMetres : volume.CubicFeet;

        public double InMass(Mass mass) => Metric ? mass.Kilograms : mass.Pounds;

        public double Net(TakeoffLine line) => line.NetUnit switch
        {
            QuantityUnit.Length => InLong(new Length(line.Net)),
            QuantityUnit.Volume => InVolume(new Volume(line.Net)),
            QuantityUnit.Area => Metric ? line.Net : new Area(line.Net).SquareFeet,
            _ => line.Net,
        };

        public string Of(QuantityUnit unit) => unit switch { QuantityUnit.Length => Long, QuantityUnit.Volume => Volume, QuantityUnit.Area => Area, _ => "" };
    }

    private static BookSheet Takeoff(Plan plan, PaperSay say, Units u) => new(
        say["paper.book.takeoff"],
        [
            new(say["paper.no"], 0, 6), new(say["paper.part"], 0, 40), new(say["paper.section"], 0, 16), new($"{say["paper.length"]} ({u.Long})", 3), new("Spec", 0, 14), new(say["paper.net"], 3), new(say["paper.book.unit"], 0, 8),
            new(say["paper.buy"], 0), new(say["paper.book.pack"], 0, 14), new($"{say["paper.weight"]} ({u.Mass})", 1), new(say["paper.verify"], 0, 10),
        ],
        [.. plan.Takeoff.Select(t => (IReadOnlyList<object?>)[
            t.Number, say.Part(t.Part, t.Name), t.Section, t.Size is { } size ? u.InLong(size) : null, t.Spec?.Value, u.Net(t), u.Of(t.NetUnit), t.Purchase, Pack(t, say), t.Mass is { } mass ? u.InMass(mass) : null, t.Verify ? say["paper.verify"] : null])]);

    private static string Pack(TakeoffLine line, PaperSay say) => line.PurchaseUnit switch
    {
        PurchaseUnit.AsMeasured => say["paper.buy.measured"],
        PurchaseUnit.Each => "",
        _ => say["paper.buy." + line.PurchaseUnit.ToString().ToLowerInvariant() + ".other"].Replace("{n} ", "", StringComparison.Ordinal),
    };

    private static BookSheet Posts(Plan plan, PaperSay say, Units u) => new(
        say["paper.book.posts"],
        [
            new(say["paper.post"], 0, 8), new(say["paper.book.line"], 0, 16), new(say["paper.kind"], 0, 14), new($"{say["paper.tape"]} ({u.Long})", 3), new($"{say["paper.easting"]} ({u.Long})", 3), new($"{say["paper.northing"]} ({u.Long})", 3),
            new($"{say["paper.ground"]} ({u.Long})", 3), new(say["paper.section"], 0, 14), new($"{say["paper.above"]} ({u.Short})", 2), new($"{say["paper.book.holeWide"]} ({u.Short})", 2), new($"{say["paper.book.holeDeep"]} ({u.Short})", 2),
            new($"{say["paper.cut"]} ({u.Short})", 2), new($"{say["paper.order"]} ({u.Short})", 2), new($"{say["paper.book.concrete"]} ({u.Volume})", 3), new(say["paper.bags"]), new($"{say["paper.weight"]} ({u.Mass})", 1),
        ],
        [.. plan.Lines.SelectMany((l, i) => l.Posts.Select(p => (IReadOnlyList<object?>)[
            PlanWords.Mark(i, p), l.Id.Value, say.ShortKind(p.Kind), u.InLong(p.Station), u.InLong(p.East), u.InLong(p.North), p.GroundHeight is { } ground ? u.InLong(ground) : null, p.Section, u.InShort(p.AboveGround),
            u.InShort(p.HoleDiameter), u.InShort(p.HoleDepth), u.InShort(p.CutLength), u.InShort(p.OrderLength), u.InVolume(p.Concrete), p.Bags, u.InMass(p.Mass)]))]);

    private static BookSheet Runs(Plan plan, PaperSay say, Units u) => new(
        say["paper.book.runs"],
        [
            new(say["paper.book.line"], 0, 16), new(say["paper.book.run"]), new(say["paper.from"], 0, 8), new(say["paper.until"], 0, 8), new($"{say["paper.book.along"]} ({u.Long})", 3), new(say["paper.run.bays"]), new($"{say["paper.book.largest"]} ({u.Long})", 3),
            new($"{say["paper.frame.rail"]} ({u.Long})", 3), new($"{say["paper.frame.wire"]} ({u.Long})", 3), new($"{say["paper.run.fabric"]} ({u.Long})", 3), new(say["paper.book.picketsLow"]), new(say["paper.book.picketsHigh"]), new(say["paper.run.railTies"]), new(say["paper.run.rings"]),
        ],
        [.. plan.Lines.SelectMany((l, i) => l.Runs.Select(r => (IReadOnlyList<object?>)[
            l.Id.Value, r.Number, PlanWords.Mark(i, l.Posts[r.FromPost]), PlanWords.Mark(i, l.Posts[r.ToPost]), u.InLong(r.Along), r.Bays, u.InLong(r.LargestBay), u.InLong(r.Rail), u.InLong(r.Wire), u.InLong(r.Fabric), r.PicketsLow, r.PicketsHigh, r.RailTies, r.Rings]))]);

    private static BookSheet Cuts(Plan plan, PaperSay say, Units u) => new(
        say["paper.book.cuts"],
        [
            new(say["paper.post"], 0, 8), new(say["paper.book.toward"], 0, 8), new($"{say["paper.book.slope"]} (%)", 2), new($"{say["paper.book.bar"]} ({u.Short})", 2), new(say["paper.book.bands"]), new(say["paper.where"], 0, 40),
            new($"{say["paper.book.mismatch"]} ({u.Short})", 2), new(say["paper.book.columnsLow"]), new(say["paper.book.columns"]), new(say["paper.book.columnsHigh"]), new(say["paper.book.crossings"], 0, 40),
        ],
        [.. plan.Lines.SelectMany((l, i) => l.Runs.SelectMany(r => (IReadOnlyList<object?>[])[
            Cut(PlanWords.Mark(i, l.Posts[r.FromPost]), PlanWords.Mark(i, l.Posts[r.ToPost]), r.Start, say, u), Cut(PlanWords.Mark(i, l.Posts[r.ToPost]), PlanWords.Mark(i, l.Posts[r.FromPost]), r.Finish, say, u)]))]);

    private static IReadOnlyList<object?> Cut(string here, string there, EndPlan end, PaperSay say, Units u) =>
    [
        here, there, end.Rise.Ratio * 100, u.InShort(end.Bar), end.Bands, say.Positions(end.BandsAt), u.InShort(end.Mismatch), end.ColumnsLow, end.Columns, end.ColumnsHigh, string.Join(", ", end.Crossings.Select(PaperSay.Diamonds)),
    ];

    private static BookSheet Gates(Plan plan, PaperSay say, Units u) => new(
        say["paper.book.gates"],
        [
            new(say["paper.book.gate"], 0, 14), new(say["paper.kind"], 0, 18), new(say["paper.from"], 0, 8), new(say["paper.until"], 0, 8), new($"{say["paper.gate.opening"]} ({u.Long})", 3), new($"{say["paper.gate.centres"]} ({u.Long})", 3),
            new(say["paper.book.leaves"]), new($"{say["paper.gate.leaf"]} ({u.Long})", 3), new(say["paper.section"], 0, 14),
        ],
        [.. plan.Lines.SelectMany((l, i) => l.Gates.Select(g => (IReadOnlyList<object?>)[
            g.Id.Value, say["gate." + g.Kind.ToString().ToLowerInvariant()], PlanWords.Mark(i, l.Posts[g.FromPost]), PlanWords.Mark(i, l.Posts[g.ToPost]), u.InLong(g.Opening), u.InLong(g.Centres), g.Leaves, u.InLong(g.Leaf), g.Post]))]);
}
