using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Desk;

/// <summary>Finds what to select for a problem: the thing its path names, else what stands at its station.</summary>
internal static class ProblemTarget
{
    private const double Same = 0.005;

    public static Selection Of(Job job, Plan? plan, Place place)
    {
        if (Indexed(place.Path, "") is not ({ } list, var index)) return AtStation(plan, place);
        return list switch
        {
            "gates" => OfGate(job, plan, index),
            "obstacles" when index < job.Obstacles.Count => OfLeg(job, job.Obstacles[index].Leg, l => Selection.Obstacle(l, job.Obstacles[index].Id)),
            "pins" when index < job.Pins.Count => OfLeg(job, job.Pins[index].Leg, l => Selection.Pin(l, job.Pins[index].Id)),
            "takeoff" => Selection.Takeoff(index),
            "specs" when index < job.Specs.Count => Selection.Spec(job.Specs[index].Id),
            "asSpecified" when index < job.AsSpecified.Count => Selection.Limit(job.AsSpecified[index].Rule),
            "lines" when index < job.Lines.Count => OfLine(job, plan, place, index),
            _ => AtStation(plan, place),
        };
    }

    private static Selection OfLine(Job job, Plan? plan, Place place, int index)
    {
        if (place.Station is not null && AtStation(plan, place) is { Kind: not SelectionKind.None } there) return there;
        Line line = job.Lines[index];
        if (Indexed(place.Path, "].") is not ("vertices", var entered) || entered >= line.Vertices.Count) return Selection.OfLine(line.Id);
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

    /// <summary>The list and index a path names: 'lines' and 2 of 'lines[2].vertices[3]', or those that follow a text in it.</summary>
    private static (string List, int Index)? Indexed(string path, string after)
    {
        int start = path.IndexOf(after, StringComparison.Ordinal);
        if (start < 0) return null;
        string rest = path[(start + after.Length)..];
        (int open, int close) = (rest.IndexOf('[', StringComparison.Ordinal), rest.IndexOf(']', StringComparison.Ordinal));
        return open > 0 && close > open && int.TryParse(rest.AsSpan(open + 1, close - open - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int index)
            ? (rest[..open], index)
            : null;
    }
}
