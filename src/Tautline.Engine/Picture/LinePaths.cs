using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Picture;

/// <summary>Points of single stretches, for what is on its way and not yet in the job.</summary>
public static class LinePaths
{
    /// <summary>East and north, metres, of a line from one station to another, in either order; nothing where there is no such line.</summary>
    public static IReadOnlyList<double> Between(Job job, LineId line, Length from, Length to)
        => job.Lines.FirstOrDefault(l => l.Id == line) is { } found
            ? LineTrace.Between(LineShape.Of(found), Whole.Nm(Length.Min(from, to)), Whole.Nm(Length.Max(from, to)))
            : [];
}
