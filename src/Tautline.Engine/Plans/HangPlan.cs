using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

public enum HangMethod
{
    /// <summary>A puller by itself: fabric of one bay or so.</summary>
    Short,

    /// <summary>A pull bar and a chain puller.</summary>
    Hand,

    /// <summary>A machine that carries and stretches.</summary>
    Machine,
}

/// <summary>What the method of a pull was chosen by, in the order it is asked.</summary>
public enum HangReason
{
    /// <summary>The job says so.</summary>
    Stated,

    /// <summary>No longer than a short puller or a hand pull takes.</summary>
    Short,

    /// <summary>Wet ground in the run, where no machine drives.</summary>
    Wet,

    /// <summary>Steeper than a machine works on.</summary>
    Steep,

    /// <summary>Longer than a hand pull.</summary>
    Long,
}

/// <summary>How the fabric of a run is hung.</summary>
/// <param name="Forward">Along the line; else from its last terminal back to its first.</param>
/// <param name="FirstTie">Index of the post where the first end is tied off.</param>
/// <param name="Pulls">In hanging order; all but the last end on a temporary bar and are tied behind it.</param>
/// <param name="Tail">Fabric wanted past the last terminal for the puller.</param>
/// <param name="Anchor">Index of the terminal the puller is chained to; nothing for a machine, which holds itself.</param>
/// <param name="Pullers">On one bar: two, an upper and a lower one, on tall fabric.</param>
/// <param name="PullBar">Width of the pull bar; nothing for a short puller.</param>
public sealed record RunHang(
    HangMethod Method, HangReason Reason, bool Forward, int FirstTie, IReadOnlyList<PullPlan> Pulls, Length Tail, int? Anchor, int Pullers, Length? PullBar);

/// <summary>One stretch of a pull.</summary>
/// <param name="From">Index of the post it begins at.</param>
/// <param name="To">Index of the post it ends at.</param>
/// <param name="Fabric">Hung between them.</param>
public sealed record PullPlan(int From, int To, Length Fabric);
