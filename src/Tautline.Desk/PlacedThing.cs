using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;

namespace Tautline.Desk;

/// <summary>Something that stands along a line, with where it is in words.</summary>
public sealed record PlacedThing(string Where, Selection At)
{
    public Gate? Gate { get; init; }

    public Obstacle? Obstacle { get; init; }

    public Pin? Pin { get; init; }

    public SiteWork? Work { get; init; }

    public static IEnumerable<PlacedThing> Gates(Session session) => session.Job.Gates.Select(gate =>
    {
        (string where, LineId line) = Place(session.Job, gate.Leg);
        int index = session.Plan.Lines.FirstOrDefault(l => l.Id == line)?.Gates.Select((g, i) => (g, i)).FirstOrDefault(p => p.g.Id == gate.Id).i ?? 0;
        return new PlacedThing(where, Selection.Gate(line, index, gate.Id)) { Gate = gate };
    });

    public static IEnumerable<PlacedThing> Obstacles(Session session) => session.Job.Obstacles.Select(obstacle =>
    {
        (string where, LineId line) = Place(session.Job, obstacle.Leg);
        return new PlacedThing(where, Selection.Obstacle(line, obstacle.Id)) { Obstacle = obstacle };
    });

    public static IEnumerable<PlacedThing> Pins(Session session) => session.Job.Pins.Select(pin =>
    {
        (string where, LineId line) = Place(session.Job, pin.Leg);
        return new PlacedThing(where, Selection.Pin(line, pin.Id)) { Pin = pin };
    });

    public static IEnumerable<PlacedThing> Works(Session session) => session.Job.Works.Select(work =>
    {
        (string where, LineId line) = Place(session.Job, work.Leg);
        return new PlacedThing(where, new Selection(SelectionKind.Work, line, 0, work.Id.Value)) { Work = work };
    });

    private static (string Where, LineId Line) Place(Job job, LegId leg)
    {
        foreach (Line line in job.Lines)
            if (LineShape.Of(line).IndexOf(leg) is var index and >= 0)
                return ($"{(line.Name.Length > 0 ? line.Name : line.Id.Value)}, {Front.Ordinal(index)}", line.Id);
        return (leg.Value, default);
    }
}
