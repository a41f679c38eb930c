using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>
/// All that is needed to draw a line seen from its side, unrolled: level stations and heights in metres, read off the plan. Heights are over the job's
/// datum, or over the start of the line where no ground was measured.
/// </summary>
public sealed record ProfilePicture
{
    public required LineId Line { get; init; }

    /// <summary>Index in the plan.</summary>
    public required int Index { get; init; }

    /// <summary>Level length of the line.</summary>
    public required double Length { get; init; }

    /// <summary>False where the line runs on the grades of its legs.</summary>
    public required bool Measured { get; init; }

    /// <summary>Station and height of each corner of the ground, in order.</summary>
    public ReadOnlyMemory<double> Ground { get; init; }

    public IReadOnlyList<ProfilePost> Posts { get; init; } = [];

    /// <summary>In order of station; nothing hangs between them.</summary>
    public IReadOnlyList<ProfileBay> Bays { get; init; } = [];

    public IReadOnlyList<ProfileGate> Gates { get; init; } = [];

    public IReadOnlyList<ProfileStretch> Grading { get; init; } = [];

    public IReadOnlyList<ProfilePull> Pulls { get; init; } = [];

    public IReadOnlyList<ProfileMark> Splices { get; init; } = [];

    public IReadOnlyList<ProfileMark> Drops { get; init; } = [];

    public IReadOnlyList<ProfileProblem> Problems { get; init; } = [];
}

/// <param name="Index">In the line's posts.</param>
/// <param name="Ground">Height of the ground where it stands.</param>
/// <param name="Top">Of the pipe.</param>
/// <param name="Bottom">Of its hole, core or point; the ground where it has none.</param>
/// <param name="Hole">Across; zero where it is driven or stands on a plate.</param>
public readonly record struct ProfilePost(int Index, PostKind Kind, double Station, double Ground, double Top, double Bottom, double Hole);

/// <summary>Fabric between two posts.</summary>
/// <param name="Run">Index in the line's runs.</param>
/// <param name="Post">Index of its first post.</param>
/// <param name="Top">Of the fabric at its first post, and at the second.</param>
/// <param name="Plumb">From the fabric's top down to its bottom.</param>
public readonly record struct ProfileBay(int Run, int Post, double From, double To, double Top, double TopTo, double Plumb);

/// <param name="Index">In the line's gates.</param>
/// <param name="Opening">In words.</param>
/// <param name="Base">The highest ground in its opening.</param>
/// <param name="Top">Of the lower one of its posts.</param>
public sealed record ProfileGate(int Index, GateId Id, GateKind Kind, string Opening, double From, double To, double Base, double Top)
{
    /// <summary>The lower post's top over the highest ground of the opening.</summary>
    public Length Tall => new(Top - Base);
}

/// <summary>Ground that does not suit the fabric.</summary>
public sealed record ProfileStretch(int Index, bool TooHigh, string Words, double From, double To);

/// <summary>One stretch of a pull, from where it is tied off to where it is pulled to.</summary>
/// <param name="Run">Index in the line's runs.</param>
/// <param name="Order">From 1 along the run's hanging.</param>
public sealed record ProfilePull(int Run, int Order, double From, double To);

/// <summary>A place along the fabric that is known within a range.</summary>
public sealed record ProfileMark(int Run, double From, double To, bool Certain, int Count);

/// <param name="Index">In the plan's problems.</param>
public sealed record ProfileProblem(int Index, Severity Severity, double Station);
