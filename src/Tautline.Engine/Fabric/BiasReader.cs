using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>Makes the cut of a far end from what was measured under tension, or tells everything that is wrong with the readings.</summary>
public static class BiasReader
{
    public static Surveyed<MeasuredCut> Read(ResolvedSpec spec, BiasReadings readings)
    {
        var problems = new ProblemList();
        CheckReading(readings.Top, "top", problems);
        CheckReading(readings.Bottom, "bottom", problems);
        CheckAdvance(spec, readings.AdvanceLow, "advanceLow", problems);
        if (readings.AdvanceHigh != readings.AdvanceLow) CheckAdvance(spec, readings.AdvanceHigh, "advanceHigh", problems);
        if (!problems.HasErrors) CheckMismatch(spec, readings, problems);
        var cut = problems.HasErrors ? null : Cut(spec, readings);
        if (cut is not null) CheckEdges(readings.Expected, cut, problems);
        return new(problems.HasErrors ? null : cut, problems.Found);
    }

    /// <summary>Both edges are measured outwards from the same picket, so neither reading is zero or less.</summary>
    private static void CheckReading(Length reading, string edge, ProblemList problems)
    {
        if (!Survey.IsMeasure(reading.Metres)) problems.Add(ProblemCode.NotFinite, new($"readings.{edge}"));
        else if (reading <= Length.Zero) problems.Add(ProblemCode.BiasReading, new($"readings.{edge}"), edge, reading);
    }

    private static void CheckAdvance(ResolvedSpec spec, Length advance, string name, ProblemList problems)
    {
        var (low, high) = MeshFormulas.TenPickets(spec);
        if (!Survey.IsMeasure(advance.Metres)) problems.Add(ProblemCode.NotFinite, new($"readings.{name}"));
        else if (10 * advance < low || 10 * advance > high) problems.Add(ProblemCode.CalibrationRange, new($"readings.{name}"), 10 * advance, low, high);
    }

    /// <summary>The edges of one width can differ by no more than its height on the steepest rail, nor by more than can be cut.</summary>
    private static void CheckMismatch(ResolvedSpec spec, BiasReadings r, ProblemList problems)
    {
        var most = Length.Min(spec.Width * spec.Rules.RakeMax.Value, 2 * Bias.Rows(spec) * r.AdvanceLow);
        if (Mismatch(r) > most || !Bias.IsCuttable(Columns(r, r.AdvanceLow), Bias.Rows(spec)))
            problems.Add(ProblemCode.BiasTooMuch, new("readings"), Mismatch(r), most);
    }

    private static void CheckEdges(LongEdge expected, MeasuredCut cut, ProblemList problems)
    {
        if (expected == LongEdge.None || cut.Cut.Dressed || cut.Cut.LongEdge == expected) return;
        problems.Add(ProblemCode.BiasEdges, new("readings"), Farther(cut.Cut.LongEdge), cut.Mismatch, Farther(expected));
    }

    /// <summary>The edge that reaches farther as cut.</summary>
    private static string Farther(LongEdge edge) => edge == LongEdge.Top ? "bottom" : "top";

    private static MeasuredCut Cut(ResolvedSpec spec, BiasReadings r)
    {
        var edge = r.Top > r.Bottom ? LongEdge.Bottom : r.Bottom > r.Top ? LongEdge.Top : LongEdge.None;
        var advance = (r.AdvanceLow + r.AdvanceHigh) / 2;
        return new MeasuredCut(
            Bias.Cut(Mismatch(r), edge, advance, Bias.Rows(spec), r.First), Mismatch(r), Columns(r, r.AdvanceHigh), Columns(r, r.AdvanceLow),
            (int)Decide.Nearest(Length.Min(r.Top, r.Bottom).Metres, advance.Metres));
    }

    private static Length Mismatch(BiasReadings r) => Length.Abs(r.Top - r.Bottom);

    private static int Columns(BiasReadings r, Length advance) => (int)Decide.Nearest(Mismatch(r).Metres, advance.Metres);
}
