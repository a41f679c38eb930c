using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Picture;

/// <summary>
/// All that is needed to draw a job seen from above: metres east and north of its origin, read off the plan and worked out nowhere else. What there can be
/// tens of thousands of is in flat arrays. Where the plan has errors, and so no posts, the lines are there as drawn, so that they can be mended.
/// </summary>
public sealed record PlanPicture
{
    /// <summary>In the order of the job's lines.</summary>
    public required IReadOnlyList<LinePicture> Lines { get; init; }

    /// <summary>One path for each leg, arcs as points within <see cref="PictureStage.Sagitta"/> of the arc.</summary>
    public required Paths LegPaths { get; init; }

    public required IReadOnlyList<LegPicture> Legs { get; init; }

    public required IReadOnlyList<VertexPicture> Vertices { get; init; }

    /// <summary>East and north of each post, line by line in order of station.</summary>
    public ReadOnlyMemory<double> PostsAt { get; init; }

    /// <summary>Of each post its <see cref="PostKind"/>.</summary>
    public ReadOnlyMemory<int> PostKinds { get; init; }

    /// <summary>Of each run: index of its line among the lines, its own among the line's runs, first and last post among all posts.</summary>
    public ReadOnlyMemory<int> Runs { get; init; }

    /// <summary>Of each bay: index of its run among all runs, first and last post among all posts.</summary>
    public ReadOnlyMemory<int> Bays { get; init; }

    public IReadOnlyList<GatePicture> Gates { get; init; } = [];

    public IReadOnlyList<StretchPicture> Stretches { get; init; } = [];

    public IReadOnlyList<PinPicture> Pins { get; init; } = [];

    public IReadOnlyList<MarkPicture> Stations { get; init; } = [];

    public IReadOnlyList<TiePicture> Ties { get; init; } = [];

    public IReadOnlyList<PullPicture> Pulls { get; init; } = [];

    public IReadOnlyList<DropPicture> Drops { get; init; } = [];

    public IReadOnlyList<ProblemPicture> Problems { get; init; } = [];

    /// <summary>West, south, east and north of everything; four zeros where there is nothing.</summary>
    public required IReadOnlyList<double> Extent { get; init; }
}

/// <summary>Many paths in one array.</summary>
/// <param name="Points">East and north, one after the other.</param>
/// <param name="Starts">Index of the first point of each path, and at last their number.</param>
public sealed record Paths(ReadOnlyMemory<double> Points, ReadOnlyMemory<int> Starts);

/// <summary>A line, and where its parts are among all legs, vertices and posts.</summary>
/// <param name="Plan">Index in the plan; -1 where there is none.</param>
public sealed record LinePicture(LineId Id, string Name, bool Closed, int Plan, int FirstLeg, int Legs, int FirstVertex, int Vertices, int FirstPost, int Posts);

/// <param name="Index">Along its line.</param>
/// <param name="Length">In words, of an arc with its radius.</param>
/// <param name="East">Of its middle, where its words stand.</param>
/// <param name="Azimuth">The way it runs there, degrees clockwise from north.</param>
public sealed record LegPicture(int Line, int Index, LegId? Id, string Length, string Bearing, double East, double North, double Azimuth);

/// <param name="Turn">In words; empty at an end.</param>
/// <param name="Inside">Azimuth of the way between its two legs, where the words of its turn stand.</param>
public sealed record VertexPicture(int Line, int Index, VertexId Id, double East, double North, string Turn, double Inside);

/// <summary>A gate. The side it swings or slides on is not in the job: it is drawn to the left of the line walked forward.</summary>
/// <param name="Index">In its line of the plan; -1 where the job is not planned.</param>
/// <param name="Faces">The two faces of the opening.</param>
/// <param name="Leaves">Each closed, from hinge or back end to its tip.</param>
/// <param name="Open">Each open.</param>
/// <param name="Arcs">The way of each tip that swings.</param>
/// <param name="Roller">The second roller post of a cantilever gate.</param>
public sealed record GatePicture(
    int Line, int Index, GateId Id, string Kind, string Words, IReadOnlyList<double> Faces, IReadOnlyList<IReadOnlyList<double>> Leaves,
    IReadOnlyList<IReadOnlyList<double>> Open, IReadOnlyList<IReadOnlyList<double>> Arcs, IReadOnlyList<double> Roller);

/// <summary>An obstacle, work or grading along a line.</summary>
/// <param name="Group">'obstacle', 'work' or 'grading'.</param>
/// <param name="Kind">Of an obstacle or work its kind, of grading 'cut' or 'fill'.</param>
/// <param name="Id">Of a grading its index in the line of the plan.</param>
/// <param name="Path">Points of the line along it.</param>
/// <param name="Around">The same with the clearance on both ends; empty without one.</param>
/// <param name="Width">Across the line; zero where nothing says so.</param>
public sealed record StretchPicture(
    string Group, string Kind, string Id, int Line, string Words, IReadOnlyList<double> Path, IReadOnlyList<double> Around, double Width);

public sealed record PinPicture(int Line, PinId Id, bool Stands, double East, double North, double Azimuth);

/// <summary>A tick across the line at a round station.</summary>
public sealed record MarkPicture(int Line, string Words, double East, double North, double Azimuth);

/// <summary>What stands where an open line ends; the azimuth is that of the way out of the line.</summary>
public sealed record TiePicture(int Line, string Kind, double East, double North, double Azimuth);

/// <summary>One stretch of fabric, in hanging order.</summary>
/// <param name="Run">Index among all runs.</param>
/// <param name="Order">From 1, over the whole job.</param>
/// <param name="Path">From where it starts to where it ends.</param>
public sealed record PullPicture(int Run, int Order, IReadOnlyList<double> Path);

/// <summary>Where rolls are laid down.</summary>
/// <param name="Run">Index among all runs.</param>
/// <param name="Rolls">How many.</param>
/// <param name="Certain">False where it hangs on the count of pickets.</param>
public sealed record DropPicture(int Run, int Rolls, bool Certain, double East, double North);

/// <summary>A problem that has a place.</summary>
/// <param name="Index">In the plan's problems.</param>
public sealed record ProblemPicture(int Index, Severity Severity, double East, double North);
