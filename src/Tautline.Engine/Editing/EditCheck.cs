using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>
/// Finds what a job says after an edit that cannot be planned and that it did not say before. The spec of posts is not known here: two gates keep
/// the distance that the thickest listed pipe asks for.
/// </summary>
internal static class EditCheck
{
    /// <summary>Outside diameter of 6-in nominal pipe, 6.625 in (ASTM F1083), the thickest of the catalogue but two.</summary>
    private static readonly Length thickPost = Length.FromInches(6.625);

    private const double LargestMetres = 1_000_000;

    public static void Compare(Job before, Job after, ProblemList problems)
    {
        var gates = Gates(after);
        var old = before.Lines.ToDictionary(l => l.Id);
        var oldGates = Gates(before);
        foreach (var line in after.Lines)
        {
            var was = old.GetValueOrDefault(line.Id);
            if (ReferenceEquals(was, line) && SameGates(line, oldGates, gates)) continue;
            var known = was is null ? [] : Slips(LineShape.Of(was), oldGates).Select(Key).ToHashSet();
            foreach (var slip in Slips(LineShape.Of(line), gates))
                if (!known.Contains(Key(slip))) problems.Add(slip.Code, slip.Place, [.. slip.Figures]);
        }
    }

    private static (ProblemCode, string) Key(Problem slip) => (slip.Code, slip.Place.Path);

    private static ILookup<LegId, Gate> Gates(Job job) => job.Gates.ToLookup(g => g.Leg);

    private static bool SameGates(Line line, ILookup<LegId, Gate> before, ILookup<LegId, Gate> after)
        => line.Vertices.All(v => v.Leg is not { } leg || before[leg.Id].SequenceEqual(after[leg.Id], ReferenceEqualityComparer.Instance));

    private static IEnumerable<Problem> Slips(LineShape shape, ILookup<LegId, Gate> gates)
        => Ends(shape).Concat(Legs(shape)).Concat(GatesOf(shape, gates));

    private static IEnumerable<Problem> Ends(LineShape shape)
    {
        if (shape.Vertices.Count < (shape.Line.Closed ? 3 : 2)) yield return Slip(ProblemCode.LineShort, shape, "vertices", shape.Vertices.Count);
        foreach (var vertex in shape.Vertices)
            if (!(Math.Abs(vertex.East.Metres) <= LargestMetres && Math.Abs(vertex.North.Metres) <= LargestMetres))
                yield return Slip(ProblemCode.NotFinite, shape, vertex.Id.Value);
    }

    private static IEnumerable<Problem> Legs(LineShape shape)
    {
        for (var i = 0; i < shape.Legs.Count; i++)
        {
            var (vertex, path) = (shape.Vertices[i], shape.Legs[i]);
            if (path.Chord.Metres * 1e9 < SiteStage.ShortestLeg.Nanometres) yield return Slip(ProblemCode.LegShort, shape, vertex.Id.Value, path.Chord, SiteStage.ShortestLeg);
            else if (vertex.Leg?.Curve is { } curve && path.Curve is null) yield return Slip(ProblemCode.CurveTight, shape, vertex.Id.Value, curve.Radius, path.Chord, path.Chord / 2);
            if (!(Math.Abs(vertex.Leg?.Grade.Ratio ?? 0) <= 1)) yield return Slip(ProblemCode.GradeSteep, shape, vertex.Id.Value, vertex.Leg!.Grade.Ratio * 100);
        }
    }

    private static IEnumerable<Problem> GatesOf(LineShape shape, ILookup<LegId, Gate> gates)
    {
        List<(Gate Gate, long NearNm, long FarNm)> along = [];
        for (var i = 0; i < shape.Legs.Count; i++)
        {
            if (shape.Vertices[i].Leg is not { } leg) continue;
            foreach (var gate in gates[leg.Id])
            {
                if (Room(gate, leg, shape.Legs[i], shape) is { } slip) yield return slip;
                var near = shape.StartsNm[i] + Whole.Nm(gate.NearFace);
                along.Add((gate, near, near + Whole.Nm(gate.Opening)));
            }
        }
        along.Sort((a, b) => a.NearNm.CompareTo(b.NearNm));
        var least = thickPost * 2;
        foreach (var (a, b) in along.Zip(along.Skip(1)))
            if (b.NearNm - a.FarNm < least.Nanometres)
                yield return Slip(ProblemCode.GateOverlap, shape, Pair(a.Gate, b.Gate), a.Gate.Id.Value, b.Gate.Id.Value, least);
    }

    /// <summary>The same words whichever of the two comes first: a line walked the other way has no new slip.</summary>
    private static string Pair(Gate a, Gate b)
        => string.CompareOrdinal(a.Id.Value, b.Id.Value) < 0 ? $"{a.Id}/{b.Id}" : $"{b.Id}/{a.Id}";

    private static Problem? Room(Gate gate, Leg leg, LegPath path, LineShape shape)
    {
        var level = Length.FromNanometres(path.LevelNm);
        if (leg.Curve is not null) return Slip(ProblemCode.GateOnCurve, shape, gate.Id.Value, gate.Id.Value);
        if ((gate.Opening + thickPost).Metres > level.Metres + 1e-9) return Slip(ProblemCode.EditGateNoRoom, shape, gate.Id.Value, gate.Id.Value, level, gate.Opening + thickPost);
        return gate.NearFace.Metres < -1e-9 || (gate.NearFace + gate.Opening).Metres > level.Metres + 1e-9
            ? Slip(ProblemCode.GateOutside, shape, gate.Id.Value, gate.NearFace, level)
            : null;
    }

    private static Problem Slip(ProblemCode code, LineShape shape, string at, params Figure[] figures) => new(code, new(at, shape.Line.Id), figures);
}
