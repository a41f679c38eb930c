using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Plans;

/// <summary>The figures of one run and its two ends. Each formula stands once.</summary>
public readonly record struct RunFigures(HungRun Run, Chain Chain, int Line, int Index)
{
    private const double SharpestMitreDegrees = 150;

    public ResolvedSpec Spec => Run.Run.Spec;

    /// <summary>Centre to centre along the ground, leg by leg.</summary>
    public N Along<N>() where N : struct, INumber<N>
    {
        if (Chain.Ground is { } ground && Run.Fitted.Count > 0)
            return N.Given("length along the measured ground", (ground.Along(Run.Run.Stretch.ToNm) - ground.Along(Run.Run.Stretch.FromNm)) * 1e-9, Unit.Length);
        var (from, to) = (Run.Run.Stretch.FromNm, Run.Run.Stretch.ToNm);
        N? sum = null;
        foreach (var leg in Chain.Legs)
        {
            if (leg.EndNm <= from || leg.StartNm >= to) continue;
            var part = Part<N>(leg, Math.Max(from, leg.StartNm), Math.Min(to, leg.EndNm));
            sum = sum is { } so ? so + part : part;
        }
        return sum!.Value;
    }

    private static N Part<N>(SiteLeg leg, long from, long to) where N : struct, INumber<N>
    {
        var level = N.Given("level length", (to - from) * 1e-9, Unit.Length);
        var t = N.Given("grade", leg.Grade, Unit.Ratio);
        return level * N.Root(N.Constant(1) + t * t);
    }

    /// <summary>Centre to centre along the top line: over measured ground bay by bay, else along the ground.</summary>
    public N Top<N>(double along) where N : struct, INumber<N>
    {
        if (Run.Fitted.Count == 0) return Known<N>(FactKind.RunAlong, along);
        N? sum = null;
        for (var bay = 0; bay < Run.Fitted.Count; bay++)
        {
            var part = Part<N>(bay);
            sum = sum is { } so ? so + part : part;
        }
        return sum!.Value;
    }

    private N Part<N>(int bay) where N : struct, INumber<N>
    {
        var t = N.Given("slope of the rail", Run.Fitted[bay].Slope, Unit.Ratio);
        return N.Given("level bay", (Run.Run.Stations[bay + 1] - Run.Run.Stations[bay]) * 1e-9, Unit.Length) * N.Root(N.Constant(1) + t * t);
    }

    /// <summary>
    /// By how much top and bottom edge slide past each other over the whole run, whatever bends lie between its ends: W * |t2 - t1|.
    /// </summary>
    public N Telescoping<N>() where N : struct, INumber<N>
        => N.Given("height of one width of fabric", Spec.Width.Metres, Unit.Length)
           * N.Size(N.Given("slope of the rail at its end", Run.GradeAtEnd, Unit.Ratio) - N.Given("at its start", Run.GradeAtStart, Unit.Ratio));

    /// <summary>By the rule where nothing is in the way; else as they were placed.</summary>
    public N Bays<N>(double along) where N : struct, INumber<N>
        => Run.Run.Even ? RunFormulas.Bays(Known<N>(FactKind.RunAlong, along), Spec.Rules) : N.Given("bays as placed", Run.Run.Bays, Unit.Count);

    public N LargestBay<N>() where N : struct, INumber<N> => N.Given("largest bay as placed", Run.Run.LargestBayNm * 1e-9, Unit.Length);

    public N Rail<N>(double top) where N : struct, INumber<N>
        => Spec.TopRail
            ? RunFormulas.BetweenFaces(Known<N>(FactKind.RunTop, top), Run.First.Section, Run.Last.Section)
            : N.Given("no top rail", 0, Unit.Length);

    public N RailPieces<N>(double rail) where N : struct, INumber<N> => RunFormulas.Pieces(Known<N>(FactKind.Rail, rail), Spec.Rules);

    public N Sleeves<N>(double pieces) where N : struct, INumber<N>
        => RunFormulas.Sleeves(N.Known(Key(FactKind.RailPieces), pieces, Unit.Count));

    public N RailMass<N>(double rail) where N : struct, INumber<N> => PostFormulas.Mass(Spec.Rail, Known<N>(FactKind.Rail, rail));

    public N Wire<N>(double top) where N : struct, INumber<N>
        => Spec.Wires > 0
            ? RunFormulas.Wire(Known<N>(FactKind.RunTop, top), Run.First.Section, Run.Last.Section, Spec.Rules)
            : N.Given("no tension wire", 0, Unit.Length);

    public N Fabric<N>(double top) where N : struct, INumber<N>
        => RunFormulas.Fabric(Known<N>(FactKind.RunTop, top), Run.First.Section, Run.Last.Section, Spec.Rules);

    public N RollTake<N>(double fabric, double mismatchStart, double mismatchEnd) where N : struct, INumber<N>
        => RunFormulas.RollTake(
            Known<N>(FactKind.Fabric, fabric), N.Known(Key(FactKind.Mismatch), mismatchStart, Unit.Length),
            N.Known(Key(FactKind.Mismatch, 1), mismatchEnd, Unit.Length));

    public N PicketsLow<N>(double take, double advanceHigh) where N : struct, INumber<N>
        => RunFormulas.Pickets(Known<N>(FactKind.RollTake, take), OfSpec<N>(FactKind.AdvanceHigh, advanceHigh));

    public N PicketsHigh<N>(double take, double advanceLow) where N : struct, INumber<N>
        => RunFormulas.Pickets(Known<N>(FactKind.RollTake, take), OfSpec<N>(FactKind.AdvanceLow, advanceLow));

    public N RailTies<N>(double fabric, double space) where N : struct, INumber<N>
        => Spec.TopRail
            ? RunFormulas.Between(Known<N>(FactKind.Fabric, fabric), OfSpec<N>(FactKind.RailTieSpace, space))
            : N.Given("no top rail", 0, Unit.Count);

    public N Rings<N>(double fabric, double space) where N : struct, INumber<N>
        => Spec.Wires > 0
            ? RunFormulas.Between(Known<N>(FactKind.Fabric, fabric), OfSpec<N>(FactKind.RingSpace, space))
            : N.Given("no tension wire", 0, Unit.Count);

    /// <summary>Rings that lace a seam, spaced like rings on a wire.</summary>
    public N Seam<N>(double fabric, double space) where N : struct, INumber<N>
        => Spec.Widths > 1
            ? RunFormulas.Between(Known<N>(FactKind.Fabric, fabric), OfSpec<N>(FactKind.RingSpace, space))
            : N.Given("no seam", 0, Unit.Count);

    /// <summary>Slats by the maker's count.</summary>
    public N Slats<N>(double fabric) where N : struct, INumber<N>
        => Spec.Spec.Slats is { } slats
            ? N.Cover(Known<N>(FactKind.Fabric, fabric) * N.Given("slats in ten feet", slats.PerTenFeet, Unit.Count), N.Given("ten feet", 3.048, Unit.Length))
            : N.Given("no slats", 0, Unit.Count);

    /// <summary>Ties on both long edges of a screen, one at each end of an edge.</summary>
    public N ScreenTies<N>(double fabric) where N : struct, INumber<N>
        => Spec.Spec.Screen is null
            ? N.Given("no screen", 0, Unit.Count)
            : N.Constant(2) * (N.Cover(Known<N>(FactKind.Fabric, fabric), N.Rule(Spec.Rules.ScreenTie)) + N.Constant(1));

    public N ConcertinaTies<N>(double along) where N : struct, INumber<N>
        => Spec.Spec.Concertina is { } coil
            ? N.Cover(Known<N>(FactKind.RunAlong, along), N.Given("space of its ties", coil.TieSpacing.Metres, Unit.Length)) + N.Constant(1)
            : N.Given("no concertina", 0, Unit.Count);

    /// <summary>The piece of a rail that is cut bay by bay.</summary>
    public N BayPiece<N>(int bay) where N : struct, INumber<N>
    {
        var along = N.Given("bay along the fence", Run.BayNm(Chain, bay) * 1e-9, Unit.Length);
        return RunFormulas.BayPiece(
            along, bay == 0 ? Run.First.Section : Spec.LinePost, bay == Run.Run.Bays - 1 ? Run.Last.Section : Spec.LinePost);
    }

    /// <summary>Barbed wire before its tails. An arm that leans out of a turn reaches further round it, one that leans in less far.</summary>
    public N Strand<N>(double top) where N : struct, INumber<N>
    {
        if (Spec.Barb is not { } barb) return N.Given("no barbed wire", 0, Unit.Length);
        return RunFormulas.Strand(
            Known<N>(FactKind.RunTop, top), N.Given("strands", barb.Strands, Unit.Count), Reaches<N>(barb),
            Tangent<N>(barb, Run.TurnAtStart), Tangent<N>(barb, Run.TurnAtEnd));
    }

    /// <summary>Three strands evenly spaced to the arm's reach: a third, two thirds and the whole. A V leans both ways and cancels out.</summary>
    private N Reaches<N>(Jobs.Barb barb) where N : struct, INumber<N>
        => barb.Lean is "left" or "right" ? N.Rule(Spec.Rules.BarbReach) * N.Constant(2) : N.Given("arms lean to neither side", 0, Unit.Length);

    /// <summary>
    /// Tangent of half the turn, positive where the arms lean to the outside. Where the line all but doubles back its strands
    /// would meet far out, at last nowhere: they end at the post instead.
    /// </summary>
    private static N Tangent<N>(Jobs.Barb barb, double turn) where N : struct, INumber<N>
    {
        var outwards = Math.Abs(turn) > SharpestMitreDegrees ? 0 : barb.Lean == "left" ? turn : -turn;
        return N.Given("tangent of half the turn", Quantities.Trig.TanDegrees(outwards / 2), Unit.Ratio);
    }

    /// <summary>The brace rail of an end, between the faces of the terminal and the first line post.</summary>
    public N BraceRail<N>(int end) where N : struct, INumber<N>
    {
        if (!Spec.Braced) return N.Given("no brace", 0, Unit.Length);
        if (Spec.Spec.Middle == "rail") return N.Given("the middle rail is the brace", 0, Unit.Length);
        var terminal = (end == 0 ? Run.First : Run.Last).Section;
        var bay = N.Given("bay at the terminal", Run.BraceBayNm(Chain, end) * 1e-9, Unit.Length);
        var posts = N.Listed("terminal post", terminal.OutsideDiameter.Metres, Unit.Length, terminal.From)
            + N.Listed("line post", Spec.LinePost.OutsideDiameter.Metres, Unit.Length, Spec.LinePost.From);
        return bay - posts / N.Constant(2);
    }

    /// <summary>Grade seen walking towards the terminal of an end.</summary>
    public double RiseTowards(int end) => end == 0 ? -Run.GradeAtStart : Run.GradeAtEnd;

    public N Bar<N>(int end) where N : struct, INumber<N>
        => WithoutBar(end)
            ? N.Given("no bar: the fabric is woven on", 0, Unit.Length)
            : Fastening.Bar(PostFormulas.Plumb<N>(Spec.Width.Metres, RiseTowards(end)), Spec.Rules);

    private bool WithoutBar(int end) => (end == 0 ? Run.First : Run.Last).WithoutBar;

    public N Bands<N>(int end, double bar) where N : struct, INumber<N>
        => WithoutBar(end)
            ? N.Given("no bar: the fabric is woven on", 0, Unit.Count)
            : Fastening.Count(Spec, N.Known(Key(FactKind.Bar, end), bar, Unit.Length), Spec.Rules.BandMax);

    public N Mismatch<N>(int end) where N : struct, INumber<N> => Bias.Mismatch<N>(Spec, RiseTowards(end));

    /// <summary>Columns at the middle of the advance's range.</summary>
    public N Columns<N>(int end, double mismatch, double advanceLow, double advanceHigh) where N : struct, INumber<N>
        => Bias.Columns(
            N.Known(Key(FactKind.Mismatch, end), mismatch, Unit.Length),
            (OfSpec<N>(FactKind.AdvanceLow, advanceLow) + OfSpec<N>(FactKind.AdvanceHigh, advanceHigh)) / N.Constant(2));

    public N ColumnsAt<N>(int end, double mismatch, FactKind advance, double value) where N : struct, INumber<N>
        => Bias.Columns(N.Known(Key(FactKind.Mismatch, end), mismatch, Unit.Length), OfSpec<N>(advance, value));

    private N Known<N>(FactKind kind, double value) where N : struct, INumber<N> => N.Known(Key(kind), value, Unit.Length);

    private N OfSpec<N>(FactKind kind, double value) where N : struct, INumber<N>
        => N.Known(new FactKey(kind, Spec.Index), value, Unit.Length);

    private FactKey Key(FactKind kind, int end = 0) => new(kind, Line, Index, end);
}
