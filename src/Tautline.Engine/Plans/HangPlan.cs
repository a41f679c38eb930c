using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

public enum HangMethod
{
    /// <summary>A pull bar and a chain puller.</summary>
    Hand,

    /// <summary>A machine that carries and stretches.</summary>
    Machine,
}

/// <summary>How the fabric of a run is hung.</summary>
/// <param name="Forward">Along the line; else from its last terminal back to its first.</param>
/// <param name="FirstTie">Index of the post where the first end is tied off.</param>
/// <param name="Pulls">In hanging order; all but the last end on a temporary bar and are tied behind it.</param>
/// <param name="Tail">Fabric wanted past the last terminal for the puller.</param>
public sealed record RunHang(HangMethod Method, bool Forward, int FirstTie, IReadOnlyList<PullPlan> Pulls, Length Tail);

/// <summary>One stretch of a pull.</summary>
/// <param name="From">Index of the post it begins at.</param>
/// <param name="To">Index of the post it ends at.</param>
/// <param name="Fabric">Hung between them.</param>
public sealed record PullPlan(int From, int To, Length Fabric);
