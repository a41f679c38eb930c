using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Placing;

/// <summary>The way between a file's plan metres and a job's metres.</summary>
internal abstract class PlanMap
{
    /// <summary>In words, for people.</summary>
    public abstract string Words { get; }

    /// <summary>The job's metres of a place of the file; not finite where there is none.</summary>
    public abstract (double East, double North) ToJob(double east, double north);

    /// <summary>The file's metres of a place of the job; not finite where there is none.</summary>
    public abstract (double East, double North) ToFile(double east, double north);
}

/// <summary>Both lie on one grid, or are both local: a shift and one scale, without rounding.</summary>
internal sealed class SameGridMap(JobOrigin origin, string grid) : PlanMap
{
    public JobOrigin Origin => origin;

    public override string Words => origin is { EastMetres: 0, NorthMetres: 0, GridPerLocal: 1 }
        ? $"The file's metres are the job's ({grid})."
        : GroundFindings.Text($"File and job lie on {grid}: {Formula(origin)}.");

    public static string Formula(JobOrigin origin) =>
        GroundFindings.Text($"local = (grid - ({origin.EastMetres}, {origin.NorthMetres})) / {origin.GridPerLocal:0.0000000}");

    public override (double East, double North) ToJob(double east, double north) =>
        ((east - origin.EastMetres) / origin.GridPerLocal, (north - origin.NorthMetres) / origin.GridPerLocal);

    public override (double East, double North) ToFile(double east, double north) => origin.ToGrid(east, north);
}

/// <summary>File and job lie on different grids: through longitude and latitude, without a change of datum.</summary>
internal sealed class TwoGridMap(GridProjection file, GridProjection job, JobOrigin origin) : PlanMap
{
    public override string Words => GroundFindings.Text(
        $"From EPSG:{file.System.EpsgCode} through longitude and latitude to EPSG:{job.System.EpsgCode}; {SameGridMap.Formula(origin)}.");

    public override (double East, double North) ToJob(double east, double north)
    {
        var (e, n) = Through(file, job, east, north);
        return ((e - origin.EastMetres) / origin.GridPerLocal, (n - origin.NorthMetres) / origin.GridPerLocal);
    }

    public override (double East, double North) ToFile(double east, double north)
    {
        var (e, n) = origin.ToGrid(east, north);
        return Through(job, file, e, n);
    }

    private static (double East, double North) Through(GridProjection from, GridProjection to, double east, double north) =>
        from.ToGeographic(east, north) is { } place ? to.ToGrid(place) : (double.NaN, double.NaN);
}
