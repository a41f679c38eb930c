using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What can be pointed at.</summary>
public enum SelectionKind
{
    None, Line, Vertex, Leg, Post, Bay, Run, Gate, Obstacle, Pin, Grading, Work, TakeoffLine, Spec, Limit,
}

/// <summary>What is pointed at: in the plan by its line and index there, in the job by its id.</summary>
/// <param name="Line">The line it is on; empty for a take-off line, spec or limit.</param>
/// <param name="Index">
/// Of a post, run, gate, grading or work in its list of the plan; of a bay that of its first post; of a vertex, or of the leg that leaves it, in
/// the order of the line; of a take-off line in the take-off. Of what is known by its id alone 0.
/// </param>
/// <param name="Id">Of a gate, obstacle, pin, work or spec in the job; the key of a limit.</param>
/// <param name="Station">Level distance from the start of the line, where a place on it was pointed at.</param>
public sealed record Selection(SelectionKind Kind, LineId Line = default, int Index = 0, string Id = "", Length? Station = null)
{
    public static Selection None { get; } = new(SelectionKind.None);

    public static Selection OfLine(LineId line) => new(SelectionKind.Line, line);

    public static Selection Post(LineId line, int index) => new(SelectionKind.Post, line, index);

    public static Selection Bay(LineId line, int firstPost) => new(SelectionKind.Bay, line, firstPost);

    public static Selection Run(LineId line, int index) => new(SelectionKind.Run, line, index);

    public static Selection Gate(LineId line, int index, GateId id) => new(SelectionKind.Gate, line, index, id.Value);

    public static Selection Vertex(LineId line, int index) => new(SelectionKind.Vertex, line, index);

    public static Selection Leg(LineId line, int index, Length? station = null) => new(SelectionKind.Leg, line, index, "", station);

    public static Selection Obstacle(LineId line, ObstacleId id) => new(SelectionKind.Obstacle, line, 0, id.Value);

    public static Selection Pin(LineId line, PinId id) => new(SelectionKind.Pin, line, 0, id.Value);

    public static Selection Takeoff(int index) => new(SelectionKind.TakeoffLine, default, index);

    public static Selection Spec(SpecId id) => new(SelectionKind.Spec, default, 0, id.Value);

    public static Selection Limit(string key) => new(SelectionKind.Limit, default, 0, key);
}
