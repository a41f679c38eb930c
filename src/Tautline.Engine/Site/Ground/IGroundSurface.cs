namespace Tautline.Engine.Site.Ground;

/// <summary>The ground as a surface: one height at a place, or none where nothing is known. All in metres.</summary>
public interface IGroundSurface
{
    /// <summary>The height at a place; none where there is no ground. The rim of the ground has ground.</summary>
    double? HeightAt(double east, double north);

    /// <summary>The ground under a path: straight between its vertices, with the gaps where there is none.</summary>
    GroundProfile Along(GroundPath path);
}
