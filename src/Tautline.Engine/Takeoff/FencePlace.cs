namespace Tautline.Engine.Takeoff;

/// <summary>What part of a fence a place is, in the order places are listed.</summary>
public enum FencePlaceKind
{
    /// <summary>A line with all that is on it.</summary>
    Line,

    /// <summary>The fence between two terminals, without posts.</summary>
    Run,

    /// <summary>All posts of a line that are no line posts, with what holds and tops them.</summary>
    Terminals,

    LinePosts,

    /// <summary>Leaves and hardware of all gates of a line; their posts are terminals.</summary>
    Gates,

    /// <summary>Removal, clearing, grading and closures along a line.</summary>
    Works,

    /// <summary>Panels on stands; on no line.</summary>
    Temporary,
}

/// <summary>A part of the fence that quantities stand in.</summary>
/// <param name="Line">Index of the line in the plan, or of the temporary fence for that.</param>
/// <param name="Run">Index of the run on the line; 0 for other places.</param>
public readonly record struct FencePlace(FencePlaceKind Kind, int Line, int Run = 0);
