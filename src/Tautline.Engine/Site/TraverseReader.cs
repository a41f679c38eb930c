using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site;

/// <summary>Makes a traverse of field notes, or tells everything that is wrong with them. Legs are told as 'legs[0]' on.</summary>
public static class TraverseReader
{
    /// <summary>A traverse from headings: azimuths, bearings, or what a compass read.</summary>
    public static Surveyed<Traverse> FromHeadings(SitePoint start, IReadOnlyList<HeadingLeg> legs, TraverseTerms? terms = null)
    {
        terms ??= new TraverseTerms();
        var problems = new ProblemList();
        CheckEnds(start, legs.Count, terms, problems);
        for (var i = 0; i < legs.Count; i++)
        {
            Survey.CheckDirection(legs[i].Heading, Place(i, "heading"), problems);
            CheckDistance(i, legs[i].Distance, problems);
        }
        return problems.HasErrors ? new(null, problems.Found) : Carry(start, legs, null, terms, problems);
    }

    /// <summary>A traverse from a first heading and the angles read between the legs.</summary>
    public static Surveyed<Traverse> FromAngles(
        SitePoint start, Direction first, IReadOnlyList<AngleLeg> legs, AngleKind kind, TraverseTerms? terms = null)
    {
        terms ??= new TraverseTerms();
        var problems = new ProblemList();
        CheckEnds(start, legs.Count, terms, problems);
        Survey.CheckDirection(first, "first", problems);
        for (var i = 0; i < legs.Count; i++)
        {
            CheckDistance(i, legs[i].Distance, problems);
            CheckAngle(i, legs, kind, problems);
        }
        if (problems.HasErrors) return new(null, problems.Found);
        var closure = AnglesOf(first, legs, kind, terms);
        if (closure is not null) CheckSum(closure, terms, problems);
        return problems.HasErrors ? new(null, problems.Found) : Carry(start, Headed(first, legs, kind, closure), closure, terms, problems);
    }

    private static string Place(int leg, string what) => $"legs[{leg}].{what}";

    private static void CheckEnds(SitePoint start, int legs, TraverseTerms terms, ProblemList problems)
    {
        Survey.CheckPoint(start, "start", problems);
        if (terms.KnownEnd is { } end) Survey.CheckPoint(end, "knownEnd", problems);
        if (terms.KnownHeading is { } heading) Survey.CheckDirection(heading, "knownHeading", problems);
        if (legs < (terms.KnownEnd is null ? 3 : 2)) problems.Add(ProblemCode.TraverseShort, new Place("legs"), legs);
    }

    private static void CheckDistance(int leg, Length distance, ProblemList problems)
    {
        if (!Survey.IsMeasure(distance.Metres)) problems.Add(ProblemCode.NotFinite, new Place(Place(leg, "distance")));
        else if (distance <= Length.Zero) problems.Add(ProblemCode.TraverseLeg, new Place(Place(leg, "distance")), leg + 1, distance);
    }

    private static void CheckAngle(int leg, IReadOnlyList<AngleLeg> legs, AngleKind kind, ProblemList problems)
    {
        var place = new Place(Place(leg, "angle"));
        if (legs[leg].AngleDegrees is not { } angle)
        {
            if (leg < legs.Count - 1) problems.Add(ProblemCode.TraverseAngleMissing, place, leg + 1);
            return;
        }
        var fits = kind == AngleKind.Turn ? Math.Abs(angle) < 180 : angle is > 0 and < 360;
        if (!fits) problems.Add(ProblemCode.TraverseAngle, place, leg + 1, angle);
    }

    /// <summary>How the angles close; null where the last one, or what it should turn to, is not known.</summary>
    private static AngularClosure? AnglesOf(Direction first, IReadOnlyList<AngleLeg> legs, AngleKind kind, TraverseTerms terms)
    {
        if (legs[^1].AngleDegrees is null) return null;
        var sum = legs.Sum(l => l.AngleDegrees!.Value);
        var turned = legs.Sum(l => TurnOf(l.AngleDegrees!.Value, kind));
        if (TurnsExpected(first, turned, kind, terms) is not { } expected) return null;
        return new AngularClosure(legs.Count, sum, InSense(expected, legs.Count, kind), terms.SpreadAngles);
    }

    /// <summary>What the turns should sum to: once around for a loop, else from the first heading to the known one.</summary>
    private static double? TurnsExpected(Direction first, double turned, AngleKind kind, TraverseTerms terms)
    {
        if (terms.KnownEnd is null) return kind == AngleKind.OnRight || (kind == AngleKind.Turn && turned > 0) ? 360 : -360;
        if (terms.KnownHeading is not { } known) return null;
        var least = Direction.Between(first, known);
        return least + 360 * Math.Floor((turned - least) / 360 + 0.5);
    }

    private static double TurnOf(double angle, AngleKind kind) => kind switch
    {
        AngleKind.OnRight => 180 - angle,
        AngleKind.OnLeft => angle - 180,
        _ => angle,
    };

    /// <summary>A sum of turns as the sum of the angles that were read.</summary>
    private static double InSense(double turns, int count, AngleKind kind) => kind switch
    {
        AngleKind.OnRight => 180.0 * count - turns,
        AngleKind.OnLeft => 180.0 * count + turns,
        _ => turns,
    };

    private static void CheckSum(AngularClosure closure, TraverseTerms terms, ProblemList problems)
    {
        var limit = terms.AngleSlipDegrees * Math.Sqrt(closure.Count);
        if (Math.Abs(closure.MisclosureDegrees) <= limit) return;
        problems.Add(
            ProblemCode.TraverseAngleSum, new Place("legs"), closure.SumDegrees, closure.ExpectedDegrees, limit);
    }

    private static List<HeadingLeg> Headed(Direction first, IReadOnlyList<AngleLeg> legs, AngleKind kind, AngularClosure? closure)
    {
        var correction = closure is { Spread: true } ? closure.CorrectionDegrees : 0;
        var headed = new List<HeadingLeg>(legs.Count);
        // Turns are summed in degrees and turned once: four right angles are exactly none.
        var turned = 0.0;
        foreach (var leg in legs)
        {
            headed.Add(new HeadingLeg(turned == 0 ? first : first.TurnRight(turned), leg.Distance));
            if (leg.AngleDegrees is { } angle) turned += TurnOf(angle + correction, kind);
        }
        return headed;
    }

    private static Surveyed<Traverse> Carry(
        SitePoint start, IReadOnlyList<HeadingLeg> legs, AngularClosure? angles, TraverseTerms terms, ProblemList problems)
    {
        var (courses, at) = (new List<Course>(legs.Count), start);
        foreach (var (heading, distance) in legs)
        {
            at = at.Step(heading, distance);
            courses.Add(new Course(heading, distance, distance * heading.North, distance * heading.East, at));
        }
        var traverse = new Traverse(start, terms.KnownEnd ?? start, courses, terms.KnownEnd is null, angles);
        if (traverse.Precision < terms.LeastPrecision) TellPoor(traverse, terms, problems);
        return new(traverse, problems.Found);
    }

    private static void TellPoor(Traverse traverse, TraverseTerms terms, ProblemList problems) => problems.Add(
        ProblemCode.TraversePoor, new Place("legs"), traverse.Misclosure.Size, traverse.Perimeter,
        new Figure(null, Math.Floor(traverse.Precision), Unit.Count), terms.LeastPrecision);
}
