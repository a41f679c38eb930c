using Tautline.Engine.Jobs;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>The coordinates that ground is laid in: a job's own metres.</summary>
/// <param name="System">The grid the job is tied to, or the site's own local one.</param>
/// <param name="Origin">How the job's metres lie on that grid.</param>
public sealed record GroundTarget(CoordinateSystemChoice System, JobOrigin Origin)
{
    /// <summary>The coordinates of a job tied to no map.</summary>
    public static GroundTarget Local { get; } = new(CoordinateSystemChoice.Local(LinearUnit.Metre), new(0, 0, 1));

    /// <summary>The metres of a grid itself.</summary>
    public static GroundTarget GridMetres(int epsgCode) => new(CoordinateSystemChoice.Epsg(epsgCode), new(0, 0, 1));

    /// <summary>A job's own frame; null where it names no system or has no scale.</summary>
    public static GroundTarget? Of(CoordinateFrame? frame)
    {
        if (frame is null) return Local;
        if (!(frame.GroundScale > 0)) return null;
        // An outline of a local system is shifted to an origin of its own as well.
        var origin = new JobOrigin(frame.OriginEast, frame.OriginNorth, 1 / frame.GroundScale);
        if (GroundAnswers.SystemOf(frame.System) is { EpsgCode: not null } system) return new(system, origin);
        return frame.System.StartsWith("local", StringComparison.OrdinalIgnoreCase) ? Local with { Origin = origin } : null;
    }
}
