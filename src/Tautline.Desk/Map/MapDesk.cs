using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.JSInterop;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Desk.Map;

/// <summary>The door between the drawing's scripts and the session: what they ask is answered at once, what they did is edited.</summary>
public sealed class MapDesk(Session session, MapTools tools, Look look)
{
    /// <summary>While planning takes longer than this the plan follows a drag only when it is dropped. The very first plan is slow and says nothing.</summary>
    private const double QuickMilliseconds = 250;

    /// <summary>The plan takes no more than one part in so many of a drag: the hand comes first.</summary>
    private const double Share = 3;

    private readonly MapSight sight = new(session);
    private bool busy;
    private bool previewed;
    private long followed;

    /// <summary>The tool was laid down.</summary>
    public event Action? ToolChanged;

    /// <summary>Two points of the picture under the drawing were clicked: their distance is wanted.</summary>
    public event Action? FitPoints;

    [JSInvokable]
    public Task FitPointsTaken()
    {
        FitPoints?.Invoke();
        return Task.CompletedTask;
    }

    /// <summary>What the keyboard stands on, for those who hear the page.</summary>
    public string Spoken { get; private set; } = "";

    public event Action? SpokenChanged;

    [JSInvokable]
    public string Snap(double east, double north, double tolerance, double? fromEast, double? fromNorth, double? wayEast, double? wayNorth, string except, double[] drawn) =>
        Json(sight.Snap(
            Point(east, north), Length.FromMetres(tolerance), Maybe(fromEast, fromNorth), Way(wayEast, wayNorth), except.Length > 0 ? new VertexId(except) : null,
            Points(drawn)), MapJson.Default.SnapAnswer);

    [JSInvokable]
    public string Typed(string length, string angle, double fromEast, double fromNorth, double? wayEast, double? wayNorth, double? toEast, double? toNorth) =>
        Json(sight.Typed(length, angle, Point(fromEast, fromNorth), Way(wayEast, wayNorth), Maybe(toEast, toNorth)), MapJson.Default.TypedAnswer);

    /// <summary>Lengths of the stretches of a path, in words.</summary>
    [JSInvokable]
    public string Lengths(double[] path)
    {
        List<SitePoint> points = Points(path);
        return Json([.. points.Skip(1).Select((p, i) => sight.LengthWords(points[i], p))], MapJson.Default.StringArray);
    }

    /// <summary>Where a tool or a dragged thing would come to stand.</summary>
    [JSInvokable]
    public string Along(double east, double north, string kind, string id, string part, double startEast, double startNorth) =>
        Json(Along(Point(east, north), kind, id, part, Point(startEast, startNorth)), MapJson.Default.AlongAnswer);

    private AlongAnswer Along(SitePoint at, string kind, string id, string part, SitePoint start)
    {
        if (part == "mark") return sight.Place(start) is { } from && sight.Place(at, from.Line) is { } to ? sight.Between(from, to) : AlongAnswer.Nowhere;
        if (sight.Place(at) is not { } place) return AlongAnswer.Nowhere;
        if (kind != "gate") return sight.Around(place, Length.Zero);
        return sight.Around(place, (session.Job.Gates.FirstOrDefault(g => g.Id.Value == id) ?? tools.Like).Opening);
    }

    /// <summary>Lets the plan follow a dragged corner where it can keep pace.</summary>
    [JSInvokable]
    public async Task Dragging(string kind, int line, int index, string id, double east, double north)
    {
        if (busy || (session.PlanMilliseconds > QuickMilliseconds && session.Revision > 1) || kind != "vertex") return;
        if (previewed && Stopwatch.GetElapsedTime(followed).TotalMilliseconds < Share * session.PlanMilliseconds) return;
        busy = true;
        try
        {
            previewed = true;
            await session.Preview(job => VertexEdits.Move(job, new(id), Point(east, north)));
        }
        finally
        {
            (busy, followed) = (false, Stopwatch.GetTimestamp());
        }
    }

    [JSInvokable]
    public async Task Dropped(string kind, int line, int index, string id, string part, double east, double north, double startEast, double startNorth)
    {
        NewIds ids = Fresh();
        bool done = await session.Apply(job => MapEdits.Drop(job, kind, id, part, Point(east, north), Point(startEast, startNorth), ids));
        if (!done && previewed) await session.Preview(null); // the plan still shows the job as it would have been
        previewed = false;
        if (kind == "vertex") session.Select(Selection.Vertex(LineAt(line), index));
    }

    [JSInvokable]
    public async Task Drawn(double[] points, bool closed)
    {
        NewIds ids = Fresh();
        Job job = session.Job;
        SpecId spec = job.Lines.FirstOrDefault(l => l.Id == session.Selected.Line)?.Spec ?? job.Specs.Select(s => s.Id).FirstOrDefault();
        string name = look.Say.Say("map.lineName", ("n", job.Lines.Count + 1));
        await session.Apply(j => MapEdits.Draw(j, Points(points), closed, spec, name, ids));
        await Stopped();
    }

    [JSInvokable]
    public Task Stopped()
    {
        tools.Tool = "select";
        ToolChanged?.Invoke();
        return Task.CompletedTask;
    }

    [JSInvokable]
    public async Task Placed(string tool, double east, double north)
    {
        NewIds ids = Fresh();
        SitePoint at = Point(east, north);
        bool done = await session.Apply(job => MapEdits.Placed(job, at, place => tool == "gate"
            ? GateEdits.Place(job, place.Leg, place.At, tools.Like, ids)
            : PlaceEdits.Pin(job, place.Leg, place.At, tools.Stands, ids)));
        if (!done) return;
        if (tool == "gate" && session.Job.Gates.Count > 0) session.Select(ThingOf("gate", session.Job.Gates[^1].Id.Value, -1));
        if (tool == "pin" && session.Job.Pins.Count > 0) session.Select(ThingOf("pin", session.Job.Pins[^1].Id.Value, -1));
        await Stopped();
    }

    [JSInvokable]
    public async Task Marked(string tool, double fromEast, double fromNorth, double toEast, double toNorth)
    {
        NewIds ids = Fresh();
        bool done = await session.Apply(job =>
        {
            if (MapEdits.Nearest(job, Point(fromEast, fromNorth)) is not { } from || MapEdits.Nearest(job, Point(toEast, toNorth), from.Line) is not { } to)
                return MapEdits.Drop(job, "", "", "", default, default, ids);
            return tool == "work"
                ? StretchEdits.Place(job, from.Line, from.Station, to.Station, tools.LikeWork, ids)
                : StretchEdits.Place(job, from.Line, from.Station, to.Station, tools.LikeObstacle, ids);
        });
        if (!done) return;
        if (tool == "obstacle") session.Select(ThingOf("obstacle", session.Job.Obstacles[^1].Id.Value, -1));
        await Stopped();
    }

    [JSInvokable]
    public Task Deleted() => DeleteSelectedAsync();

    public async Task DeleteSelectedAsync()
    {
        Selection selected = session.Selected;
        if (await session.Apply(job => MapEdits.Delete(job, selected))) session.Select(Selection.None);
    }

    [JSInvokable]
    public async Task Nudged(double east, double north)
    {
        Selection selected = session.Selected;
        await session.Apply(job => MapEdits.VertexOf(job, selected) is { } id && LineShape.Of(job.Lines.First(l => l.Id == selected.Line)).Vertices[selected.Index] is var v
            ? VertexEdits.Move(job, id, new(v.East + Length.FromMetres(east), v.North + Length.FromMetres(north)))
            : VertexEdits.Move(job, new(""), default));
    }

    [JSInvokable]
    public Task Picked(string kind, int line, int index, string id, double east, double north)
    {
        session.Select(SelectionOf(kind, line, index, id, Point(east, north)));
        return Task.CompletedTask;
    }

    [JSInvokable]
    public Task Hovered(string kind, int line, int index, string id)
    {
        Selection over = SelectionOf(kind, line, index, id, null);
        session.Hover(over);
        Spoken = MapWords.Of(session, over, look.Say);
        SpokenChanged?.Invoke();
        return Task.CompletedTask;
    }

    /// <summary>What is selected or hovered, as the scripts name it.</summary>
    public MapTarget TargetOf(Selection selection)
    {
        int line = session.Job.Lines.Select((l, i) => (l.Id, i)).FirstOrDefault(l => l.Id == selection.Line, (default, -1)).Item2;
        string id = selection.Kind == SelectionKind.Vertex ? MapEdits.VertexOf(session.Job, selection)?.Value ?? "" : selection.Id;
        return new(selection.Kind.ToString().ToLowerInvariant(), line, selection.Index, id);
    }

    private Selection SelectionOf(string kind, int line, int index, string id, SitePoint? at)
    {
        if (kind == "problem") return index < session.Plan.Problems.Count ? ProblemTarget.Of(session.Job, session.Plan, session.Plan.Problems[index].Place) : Selection.None;
        LineId on = LineAt(line);
        return kind switch
        {
            "post" => Selection.Post(on, index),
            "bay" => Selection.Bay(on, index),
            "vertex" => Selection.Vertex(on, index),
            "leg" => Selection.Leg(on, index, at is { } point ? MapEdits.Nearest(session.Job, point, on)?.Station : null),
            "gate" or "pin" or "obstacle" or "work" => ThingOf(kind, id, line),
            _ => Selection.None,
        };
    }

    private Selection ThingOf(string kind, string id, int line)
    {
        Job job = session.Job;
        LegId? leg = kind switch
        {
            "gate" => job.Gates.FirstOrDefault(g => g.Id.Value == id)?.Leg,
            "pin" => job.Pins.FirstOrDefault(p => p.Id.Value == id)?.Leg,
            "work" => job.Works.FirstOrDefault(w => w.Id.Value == id)?.Leg,
            _ => job.Obstacles.FirstOrDefault(o => o.Id.Value == id)?.Leg,
        };
        LineId on = line >= 0 ? LineAt(line) : job.Lines.FirstOrDefault(l => l.Vertices.Any(v => v.Leg?.Id == leg))?.Id ?? default;
        var planned = session.Plan.Lines.FirstOrDefault(l => l.Id == on);
        return kind switch
        {
            "gate" => Selection.Gate(on, planned?.Gates.Select((g, i) => (g.Id, i)).FirstOrDefault(g => g.Id.Value == id).i ?? 0, new(id)),
            "pin" => Selection.Pin(on, new(id)),
            "work" => new Selection(SelectionKind.Work, on, planned?.Works.Select((w, i) => (w.Id, i)).FirstOrDefault(w => w.Id == id).i ?? 0, id),
            _ => Selection.Obstacle(on, new(id)),
        };
    }

    private LineId LineAt(int index) => index >= 0 && index < session.Job.Lines.Count ? session.Job.Lines[index].Id : default;

    private static NewIds Fresh() => new(Guid.NewGuid().ToString("n")[..8]);

    private static string Json<T>(T value, JsonTypeInfo<T> type) => JsonSerializer.Serialize(value, type);

    private static SitePoint Point(double east, double north) => new(Length.FromMetres(east), Length.FromMetres(north));

    private static SitePoint? Maybe(double? east, double? north) => east is { } e && north is { } n ? Point(e, n) : null;

    private static Direction? Way(double? east, double? north) =>
        east is { } e && north is { } n && (e != 0 || n != 0) && double.IsFinite(e) && double.IsFinite(n) ? Direction.FromVector(e, n) : null;

    private static List<SitePoint> Points(double[] flat)
    {
        List<SitePoint> points = [];
        for (int i = 0; i + 1 < flat.Length; i += 2) points.Add(Point(flat[i], flat[i + 1]));
        return points;
    }
}
