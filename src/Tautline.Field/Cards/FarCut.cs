using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Field.Cards;

/// <summary>The cut of an end of fabric from two tape readings under tension, by the Engine's own reader.</summary>
/// <param name="Measured">Nothing where a reading is wrong.</param>
/// <param name="Card">The cut drawn; it has no strokes where the end is dressed out instead.</param>
/// <param name="Wide">Width of a diamond: two pickets.</param>
/// <param name="Tall">Its height.</param>
/// <param name="Problems">What is wrong with the readings, or to be looked at again.</param>
public sealed record FarCut(MeasuredCut? Measured, CutCard? Card, Length Wide, Length Tall, IReadOnlyList<Problem> Problems)
{
    /// <param name="end">0 for the start of the run, 1 for its far end.</param>
    /// <param name="top">Along the top edge, from the marked picket out to where the bar will stand.</param>
    /// <param name="bottom">The same along the bottom edge.</param>
    /// <param name="tenPickets">Measured on the fabric; the range of the plan where nobody measured.</param>
    /// <param name="first">Where the interlocks lie at which the cut first steps over.</param>
    public static FarCut Of(Plan plan, int line, int run, int end, Length top, Length bottom, Length? tenPickets = null, FirstInterlock first = FirstInterlock.Unknown)
    {
        var planned = plan.Lines[line].Runs[run];
        var spec = plan.Specs.First(s => s.Id == planned.Spec);
        var (low, high) = tenPickets is { } ten ? (ten / 10, ten / 10) : (spec.AdvanceLow, spec.AdvanceHigh);
        var readings = new BiasReadings(top, bottom, low, high) { First = first, Expected = (end == 0 ? planned.Start : planned.Finish).LongEdge };
        var read = BiasReader.Read(plan.Basis.Lines[line].Runs[run].Run.Spec, readings);
        var advance = (low + high) / 2;
        return new(read.Value, read.Value is { } measured ? CutCard.Of(measured.Cut, advance) : null, advance * 2, spec.HalfDiamond * 2, read.Problems);
    }
}
