using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.StakeOut;

/// <summary>
/// Lists the posts of a plan for setting out. Coordinates are those of the job's map grid in that grid's own unit, feet as the grid
/// means them, or of the local system its lines came in; a job without either is set out in its own east and north.
/// </summary>
public static class StakeLister
{
    /// <param name="plan">A plan without errors.</param>
    /// <param name="units">Of a job without a grid.</param>
    public static StakeList Of(Plan plan, UnitSystem units)
    {
        var frame = plan.Basis.Job.Coordinates;
        var system = frame is null ? null : SystemOf(frame.System);
        var unit = system?.Unit ?? Local(frame?.System) ?? (units == UnitSystem.Metric ? LinearUnit.Metre : LinearUnit.Foot);
        var origin = frame is null ? new JobOrigin(0, 0, 1) : new JobOrigin(frame.OriginEast, frame.OriginNorth, 1 / frame.GroundScale);
        var words = new PlanWords(units);
        var stakes = plan.Lines.SelectMany((line, i) => line.Posts.Select(p => StakeOf(p, i, unit, origin, words)));
        return new StakeList(unit, frame?.System, [.. stakes]);
    }

    private static ProjectedSystem? SystemOf(string name)
        => name.StartsWith("EPSG:", StringComparison.OrdinalIgnoreCase) && int.TryParse(name.AsSpan(5), NumberStyles.None, CultureInfo.InvariantCulture, out var code)
            ? CoordinateSystemCatalog.FindProjected(code)
            : null;

    /// <summary>The unit a local system of an outline names: 'local US survey feet'.</summary>
    private static LinearUnit? Local(string? name)
    {
        foreach (var unit in Enum.GetValues<LinearUnit>())
            if (name is not null && name.EndsWith(unit.Name(), StringComparison.Ordinal)) return unit;
        return null;
    }

    private static Stake StakeOf(PostPlan post, int line, LinearUnit unit, JobOrigin origin, PlanWords words)
    {
        var (east, north) = origin.ToGrid(post.East.Metres, post.North.Metres);
        double? ground = post.GroundHeight is { } height ? unit.FromMetres(height.Metres) : null;
        return new Stake(
            PlanWords.Mark(line, post), unit.FromMetres(north), unit.FromMetres(east), ground, unit.FromMetres(post.AboveGround.Metres),
            $"{PlanWords.Kind(post.Kind)} {post.Section}, {words.Held(post)}");
    }
}
