using System.Globalization;
using System.Text.RegularExpressions;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Web.Desk;

/// <summary>Finds what to select for a problem: the thing its path names, else what stands at its station.</summary>
internal static partial class ProblemTarget
{
    private const double Same = 0.005;

    public static Selection Of(Job job, Plan? plan, Place place)
    {
        if (Path().Match(place.Path) is not { Success: true } path) return AtStation(plan, place);
        int index = int.Parse(path.Groups["index"].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);
        return path.Groups["list"].Value switch
        {
            "gates" => OfGate(job, plan, index),
            "obstacles" when index < job.Obstacles.Count => OfLeg(job, job.Obstacles[index].Leg, l => Selection.Obstacle(l, job.Obstacles[index].Id)),
            "pins" when index < job.Pins.Count => OfLeg(job, job.Pins[index].Leg, l => Selection.Pin(l, job.Pins[index].Id)),
            "takeoff" => Selection.Takeoff(index),
            "specs" when index < job.Specs.Count => Selection.Spec(job.Specs[index].Id),
            "asSpecified" when index < job.AsSpecified.Count => Selection.Limit(job.AsSpecified[index].Rule),
            "lines" when index < job.Lines.Count => OfLine(job, plan, place, index, path.Groups["vertex"]),
            _ => AtStation(plan, place),
        };
    }

    private static Selection OfLine(Job job, Plan? plan, Place place, int index, Group vertex)
    {
        if (place.Station is not null && AtStation(plan, place) is { Kind: not SelectionKind.None } there) return there;
        Line line = job.Lines[index];
        if (!vertex.Success) return Selection.OfLine(line.Id);
        int entered = int.Parse(vertex.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);
        if (entered >= line.Vertices.Count) return Selection.OfLine(line.Id);
        int inOrder = line.Vertices.OrderBy(v => v.Order).ToList().IndexOf(line.Vertices[entered]);
        return place.Path.Contains(".leg", StringComparison.Ordinal) ? Selection.Leg(line.Id, inOrder) : Selection.Vertex(line.Id, inOrder);
    }

    private static Selection OfGate(Job job, Plan? plan, int index)
    {
        if (index >= job.Gates.Count) return Selection.None;
        Gate gate = job.Gates[index];
        foreach (LinePlan line in plan?.Lines ?? [])
            if (line.Gates.Select((g, i) => (g, i)).FirstOrDefault(p => p.g.Id == gate.Id) is { g: not null } found)
                return Selection.Gate(line.Id, found.i, gate.Id);
        return OfLeg(job, gate.Leg, l => Selection.Gate(l, 0, gate.Id));
    }

    private static Selection OfLeg(Job job, LegId leg, Func<LineId, Selection> make) =>
        job.Lines.FirstOrDefault(l => l.Vertices.Any(v => v.Leg?.Id == leg)) is { } line ? make(line.Id) : Selection.None;

    private static Selection AtStation(Plan? plan, Place place)
    {
        if (place.Line is not { } id) return Selection.None;
        if (place.Station is not { } station || plan?.Lines.FirstOrDefault(l => l.Id == id) is not { Posts.Count: > 0 } line)
            return Selection.OfLine(id) with { Station = place.Station };
        int before = line.Posts.Select((p, i) => (p, i)).LastOrDefault(p => p.p.Station.Metres <= station.Metres + Same).i;
        return Math.Abs(line.Posts[before].Station.Metres - station.Metres) <= Same ? Selection.Post(id, before) : Selection.Bay(id, before);
    }

    [GeneratedRegex(@"^(?<list>[a-zA-Z]+)\[(?<index>\d{1,8})\](?:\.vertices\[(?<vertex>\d{1,8})\])?")]
    private static partial Regex Path();
}
