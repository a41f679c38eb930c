using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>Reads what was measured on fabric, or tells everything that is wrong with it. Lengths under 'measured'.</summary>
public static class MeshReader
{
    /// <summary>A mesh may be 1/8 in off its opening (Iowa DOT 4154.03; Texas DOT Item 550).</summary>
    private static readonly Length meshTolerance = Length.FromInches(0.125);

    /// <summary>As for ten pickets: further out is a slip of counting.</summary>
    private const double Slip = 0.15;

    public static Surveyed<MeshReading> Read(ResolvedSpec spec, MeshMeasured measured)
    {
        var problems = new ProblemList();
        CheckGiven(measured, problems);
        if (!problems.HasErrors) CheckRanges(spec, measured, problems);
        var changes = problems.HasErrors || NothingOfTheMesh(measured) ? [] : Changes(spec, measured);
        if (changes is null) TellContradiction(spec, measured, problems);
        return problems.HasErrors ? new(null, problems.Found) : new(Reading(spec, measured, changes!), problems.Found);
    }

    /// <summary>The mesh as delivered: by calibration one shape, before it both ends of the range.</summary>
    public static IReadOnlyList<MeshShape> Delivered(ResolvedSpec spec)
    {
        var (low, high) = (MeshFormulas.AdvanceLow<Plain>(spec), MeshFormulas.AdvanceHigh<Plain>(spec));
        return low.Value == high.Value ? [Shape(spec, low)] : [Shape(spec, low), Shape(spec, high)];
    }

    private static MeshShape Shape(ResolvedSpec spec, Plain advance)
        => new(new Length(advance.Value), new Length(MeshFormulas.HalfDiamondAt(spec, advance).Value));

    private static bool NothingOfTheMesh(MeshMeasured m) => m.TenPickets is null && m.Diamonds is null;

    private static void CheckGiven(MeshMeasured m, ProblemList problems)
    {
        if (NothingOfTheMesh(m) && m.Over is null && m.Squeeze is null) problems.Add(ProblemCode.MeshNothing, new("measured"));
        if (m.Diamonds is null != m.Over is null) problems.Add(ProblemCode.MeshCountAlone, new(m.Over is null ? "measured.over" : "measured.diamonds"));
        foreach (var (length, at) in new[] { (m.TenPickets, "tenPickets"), (m.Over, "over"), (m.Squeeze, "squeeze") })
            if (length is { } given && !Survey.IsMeasure(given.Metres)) problems.Add(ProblemCode.NotFinite, new($"measured.{at}"));
        if (m.Diamonds is { } count && !Survey.IsMeasure(count)) problems.Add(ProblemCode.NotFinite, new("measured.diamonds"));
    }

    private static void CheckRanges(ResolvedSpec spec, MeshMeasured m, ProblemList problems)
    {
        var (low, high) = MeshFormulas.TenPickets(spec);
        if (m.TenPickets is { } ten && (ten < low || ten > high)) problems.Add(ProblemCode.CalibrationRange, new("measured.tenPickets"), ten, low, high);
        if (m is { Diamonds: { } count, Over: { } over }) CheckCount(spec, count, over, problems);
        if (m.Squeeze is { } gap && (gap < Length.Zero || gap > spec.Fabric.Mesh))
            problems.Add(ProblemCode.SqueezeRange, new("measured.squeeze"), gap, spec.Fabric.Mesh);
    }

    private static void CheckCount(ResolvedSpec spec, double count, Length over, ProblemList problems)
    {
        var (low, high) = DiamondHeights(spec);
        if (count > 0 && over > Length.Zero && over / count >= low && over / count <= high) return;
        problems.Add(ProblemCode.MeshCount, new("measured.diamonds"), count, over, low, high);
    }

    /// <summary>How tall a diamond of this mesh can be: what follows from the range of the advance, and 15 % beyond.</summary>
    private static (Length Low, Length High) DiamondHeights(ResolvedSpec spec)
    {
        var shapes = Delivered(spec with { Calibration = null });
        return (2 * (1 - Slip) * shapes[^1].HalfDiamond, 2 * (1 + Slip) * shapes[0].HalfDiamond);
    }

    private static MeshReading Reading(ResolvedSpec spec, MeshMeasured m, IReadOnlyList<MeshChange> changes)
    {
        var (low, high) = (spec.Rules["mesh.squeezeMin"].Length, spec.Rules["mesh.squeezeMax"].Length);
        var squeezed = m.Squeeze is not { } gap ? Squeezed.NotMeasured : gap < low ? Squeezed.BarTight : gap > high ? Squeezed.Slack : Squeezed.Good;
        return new MeshReading(changes, spec.Diamonds.Diamonds, squeezed, low, high);
    }

    /// <summary>Null where the readings contradict each other or the calibration.</summary>
    private static IReadOnlyList<MeshChange>? Changes(ResolvedSpec spec, MeshMeasured m)
    {
        var a = m.TenPickets / 10;
        var c = m.Over / (2 * m.Diamonds);
        if (a is { } both && c is { } half) return Measured(spec, new MeshShape(both, half));
        List<MeshChange> changes = [];
        foreach (var delivered in Delivered(spec))
        {
            var now = a is { } advance ? delivered.AtAdvance(advance) : delivered.AtHalfDiamond(c!.Value);
            if (now is null) return null;
            changes.Add(new MeshChange(delivered, now));
        }
        return changes;
    }

    /// <summary>Measured both ways: the leg of the wire is known, so what was woven is known too.</summary>
    private static IReadOnlyList<MeshChange>? Measured(ResolvedSpec spec, MeshShape now)
    {
        var (low, high) = Legs(spec);
        if (now.Leg < low || now.Leg > high) return null;
        return [new MeshChange(spec.Calibration is null ? MeshShape.Woven(WireCentres(spec), now.Leg) : Delivered(spec)[0], now)];
    }

    /// <summary>Legs the wire can have: no mesh has one under the distance of its wires, less what a mesh may be off.</summary>
    private static (Length Low, Length High) Legs(ResolvedSpec spec)
        => spec.Calibration is null
            ? (WireCentres(spec) - meshTolerance, (1 + Slip) * Delivered(spec).Max(s => s.Leg))
            : ((1 - Slip) * Delivered(spec)[0].Leg, (1 + Slip) * Delivered(spec)[0].Leg);

    private static Length WireCentres(ResolvedSpec spec) => spec.Fabric.Mesh + spec.Fabric.Wire;

    private static void TellContradiction(ResolvedSpec spec, MeshMeasured m, ProblemList problems)
    {
        var (low, high) = Legs(spec);
        var leg = m is { TenPickets: { } ten, Diamonds: { } count, Over: { } over } ? new MeshShape(ten / 10, over / (2 * count)).Leg : high;
        problems.Add(ProblemCode.MeshContradicts, new("measured"), leg, low, high);
    }
}
