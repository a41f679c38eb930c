using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>One course of a traverse, carried out.</summary>
/// <param name="Latitude">Distance made good to the north, south negative.</param>
/// <param name="Departure">Distance made good to the east, west negative.</param>
/// <param name="To">Where the course ends.</param>
public sealed record Course(Direction Heading, Length Distance, Length Latitude, Length Departure, SitePoint To);

/// <summary>By how much a traverse misses: from where it should end to where it ends.</summary>
public readonly record struct LinearMisclosure(Length Latitude, Length Departure)
{
    public Length Size => Survey.Hypotenuse(Latitude, Departure);

    /// <summary>Which way the traverse ends from where it should; null where it misses by nothing.</summary>
    public Direction? Heading => Survey.Way(Departure.Metres, Latitude.Metres);
}

/// <summary>
/// A traverse: level courses from a known point back to it (a loop) or to another known point. Made by
/// <see cref="TraverseReader"/>. Sources of the formulas: docs/calculation.md, section 14.
/// </summary>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Where it should end; the start itself for a loop.</param>
/// <param name="Courses">At least three for a loop, two otherwise.</param>
/// <param name="Loop">True where it returns to its start.</param>
/// <param name="Angles">Null where no angles were read, or none that could be checked.</param>
public sealed record Traverse(SitePoint Start, SitePoint End, IReadOnlyList<Course> Courses, bool Loop, AngularClosure? Angles)
{
    /// <summary>The sum of all courses.</summary>
    public Length Perimeter => new(Courses.Sum(c => c.Distance.Metres));

    public LinearMisclosure Misclosure => new(
        new Length(Courses.Sum(c => c.Latitude.Metres)) - (End.North - Start.North),
        new Length(Courses.Sum(c => c.Departure.Metres)) - (End.East - Start.East));

    /// <summary>
    /// The n of the precision 1:n, perimeter over misclosure, both in whole nanometres; infinite where the misclosure is none.
    /// </summary>
    public double Precision => WholeNanometres(Perimeter) / WholeNanometres(Misclosure.Size);

    /// <summary>The corners: the start and the end of every course, but for the last of a loop, which is the start again.</summary>
    public IReadOnlyList<SitePoint> Corners => [Start, .. Courses.Take(Loop ? Courses.Count - 1 : Courses.Count).Select(c => c.To)];

    /// <summary>The area a loop encloses, its last course led to the start; null for a traverse between two points.</summary>
    public Area? Area => Loop ? CoordinateArea.Of(Corners) : null;

    /// <summary>
    /// The traverse after the compass rule: each course takes of the misclosure what its length is of the perimeter, and the
    /// last one ends where it should. Headings and lengths are those between the moved points. It hides a blunder as
    /// readily as it spreads a slip: look at the misclosure first.
    /// </summary>
    public Traverse Adjust()
    {
        var (miss, perimeter) = (Misclosure, Perimeter);
        var adjusted = new List<Course>(Courses.Count);
        var walked = Length.Zero;
        foreach (var course in Courses)
        {
            walked += course.Distance;
            adjusted.Add(Adjusted(course, miss, course.Distance / perimeter, walked / perimeter));
        }
        // The shares sum to one but for roundings: the last point is known and needs none.
        adjusted[^1] = adjusted[^1] with { To = End };
        return this with { Courses = adjusted };
    }

    // A misclosure below half a nanometre is the rounding of doubles. Length.Nanometres would overflow on absurd notes.
    private static double WholeNanometres(Length length) => Math.Round(length.Metres * 1e9);

    private static Course Adjusted(Course course, LinearMisclosure miss, double share, double walkedShare)
    {
        var (latitude, departure) = (course.Latitude - miss.Latitude * share, course.Departure - miss.Departure * share);
        var to = new SitePoint(course.To.East - miss.Departure * walkedShare, course.To.North - miss.Latitude * walkedShare);
        // A course as long as its correction may vanish; it keeps the heading it was walked on.
        var heading = Survey.Way(departure.Metres, latitude.Metres) ?? course.Heading;
        return new Course(heading, Survey.Hypotenuse(latitude, departure), latitude, departure, to);
    }
}
