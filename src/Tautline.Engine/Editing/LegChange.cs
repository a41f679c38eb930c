using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

internal enum LegEnd { Start, End }

/// <summary>
/// Where things are along a leg after one of its ends was moved. They stay where they stand: they keep their distance from the end that did not
/// move. But what reaches the moved end still reaches it, and a gate within a yard of it goes with it, for it belongs to that corner. A stretch
/// of ground or a place that no longer lies along the leg is cut off at its end or taken out, and that is told; a gate is slid back onto the leg,
/// and where there is no room for it the edit is refused (<see cref="EditCheck"/>).
/// </summary>
internal sealed class LegChange(LegId leg, LineId line, long oldNm, long newNm, LegEnd moved, ProblemList told)
{
    /// <summary>Our own practice: a gate as near to a corner as this was set against it.</summary>
    private static readonly long gateAtCornerNm = Length.FromInches(36).Nanometres;

    private const long TouchNm = 1_000;

    public LegId Leg { get; } = leg;

    public IEnumerable<Standing> Place(Standing thing)
    {
        var shift = moved == LegEnd.Start ? newNm - oldNm : 0;
        return thing.Kind == StandingKind.Gate ? [Gate(thing, shift)] : thing.IsPlace ? Spot(thing, shift) : Stretch(thing, shift);
    }

    private Standing Gate(Standing gate, long shift)
    {
        if (moved == LegEnd.Start && gate.FromNm < gateAtCornerNm && gate.FromNm <= oldNm - gate.ToNm) shift = 0;
        if (moved == LegEnd.End && oldNm - gate.ToNm < gateAtCornerNm && oldNm - gate.ToNm <= gate.FromNm) shift = newNm - oldNm;
        return Slid(gate with { FromNm = gate.FromNm + shift, ToNm = gate.ToNm + shift }, newNm, line, told);
    }

    /// <summary>A gate moved onto its leg, as little as needed, and told; where it has no room its start is the leg's.</summary>
    public static Standing Slid(Standing gate, long levelNm, LineId line, ProblemList told)
    {
        var opening = gate.ToNm - gate.FromNm;
        var near = Math.Clamp(gate.FromNm, 0, Math.Max(0, levelNm - opening));
        if (Math.Abs(near - gate.FromNm) > TouchNm && opening <= levelNm)
            told.Add(ProblemCode.EditGateSlid, new("gates", line), gate.Id, Length.FromNanometres(Math.Abs(near - gate.FromNm)));
        return gate with { FromNm = near, ToNm = near + opening };
    }

    private IEnumerable<Standing> Spot(Standing place, long shift)
    {
        var at = place.FromNm + shift;
        // At the very end it belongs to the vertex.
        if (moved == LegEnd.Start && place.FromNm <= TouchNm) at = 0;
        if (moved == LegEnd.End && oldNm - place.FromNm <= TouchNm) at = newNm;
        if (place.Kind == StandingKind.Hang) at = Math.Clamp(at, 0, newNm);
        if (at >= 0 && at <= newNm) return [place with { FromNm = at, ToNm = at }];
        Off(place, line, told);
        return [];
    }

    private IEnumerable<Standing> Stretch(Standing stretch, long shift)
    {
        var (from, to) = (stretch.FromNm + shift, stretch.ToNm + shift);
        if (moved == LegEnd.Start && stretch.FromNm <= TouchNm) from = 0;
        if (moved == LegEnd.End && oldNm - stretch.ToNm <= TouchNm) to = newNm;
        return Within(stretch with { FromNm = from, ToNm = to }, newNm, line, told);
    }

    /// <summary>The part of a stretch that lies on its leg.</summary>
    public static IEnumerable<Standing> Within(Standing stretch, long levelNm, LineId line, ProblemList told)
    {
        var (from, to) = (Math.Max(0, stretch.FromNm), Math.Min(levelNm, stretch.ToNm));
        var lost = stretch.ToNm - stretch.FromNm - (to - from);
        if (to - from <= TouchNm)
        {
            Off(stretch, line, told);
            return [];
        }
        if (lost > TouchNm) told.Add(ProblemCode.EditMarkCut, new("", line), Name(stretch.Kind), stretch.Id, Length.FromNanometres(lost));
        return [stretch with { FromNm = from, ToNm = to }];
    }

    private static void Off(Standing thing, LineId line, ProblemList told)
        => told.Add(ProblemCode.EditMarkOff, new("", line), Name(thing.Kind), thing.Id);

    internal static string Name(StandingKind kind) => kind switch
    {
        StandingKind.Obstacle => "obstacle",
        StandingKind.Work => "work",
        StandingKind.Pin => "pin",
        StandingKind.Hang => "note on hanging",
        StandingKind.Shot => "shot of the ground",
        _ => "gate",
    };
}
