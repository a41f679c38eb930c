using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Editing;

/// <summary>Where the things of a leg are after a vertex was put into it. Past the vertex they are measured from the far end, which did not move.</summary>
internal sealed class LegParting(LineId line, LegId second, long cutNm, long oldNm, long firstNm, long secondNm, ProblemList told)
{
    private const long TouchNm = 1_000;

    public IEnumerable<Standing> Place(Standing thing)
    {
        if (thing.ToNm <= cutNm + TouchNm) return [First(thing)];
        if (thing.FromNm >= cutNm - TouchNm) return [Second(thing)];
        if (thing.Kind != StandingKind.Gate) return [First(thing), Second(thing)];
        told.Add(ProblemCode.EditGateAcross, new("gates", line), thing.Id);
        return [thing];
    }

    private Standing First(Standing thing) => thing with { FromNm = Math.Min(thing.FromNm, firstNm), ToNm = Math.Min(thing.ToNm, firstNm) };

    private Standing Second(Standing thing)
    {
        var shift = secondNm - oldNm;
        return thing with { Leg = second, FromNm = Math.Max(0, thing.FromNm + shift), ToNm = Math.Max(0, thing.ToNm + shift) };
    }
}
