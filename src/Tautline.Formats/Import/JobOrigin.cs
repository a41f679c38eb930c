namespace Tautline.Formats.Import;

/// <summary>
/// Ties a job's own metres to the grid: grid = origin + <see cref="GridPerLocal"/> x local, for east and north alike.
/// With the system's code this is all that is needed to go back.
/// </summary>
/// <param name="EastMetres">Grid east of the point where local east is 0, a whole number of 100 m.</param>
/// <param name="NorthMetres">Grid north of the point where local north is 0, a whole number of 100 m.</param>
/// <param name="GridPerLocal">Grid metres in one local metre: the combined factor when lengths are ground lengths, otherwise 1.</param>
public sealed record JobOrigin(double EastMetres, double NorthMetres, double GridPerLocal)
{
    /// <summary>Local east and north, metres, of a place on the grid.</summary>
    public (double East, double North) ToLocal(double gridEast, double gridNorth) =>
        (Math.Round((gridEast - EastMetres) / GridPerLocal, 6), Math.Round((gridNorth - NorthMetres) / GridPerLocal, 6));

    /// <summary>Grid east and north, metres, of a place of the job.</summary>
    public (double East, double North) ToGrid(double localEast, double localNorth) =>
        (EastMetres + localEast * GridPerLocal, NorthMetres + localNorth * GridPerLocal);
}
