using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Field.Inspecting;

/// <summary>When a fence is looked at, in the order of the work.</summary>
public enum InspectionStage
{
    Posts,
    Frame,
    Fabric,
    Gates,
    Finished,
}

/// <summary>What a check is made on.</summary>
public enum CheckSubject
{
    /// <summary>A run as a whole: the worst place of it is what is measured.</summary>
    Run,

    /// <summary>Each post of a run, or the worst of them for the whole run.</summary>
    Post,
    Gate,
}

/// <summary>What is measured.</summary>
public enum CheckMeasure
{
    /// <summary>Nothing: it is looked at.</summary>
    Look,

    /// <summary>Metres.</summary>
    Length,
    Degrees,
    Days,
}

/// <summary>An end of a tolerance, with where it comes from.</summary>
public sealed record CheckBound(double Value, Provenance From);

/// <summary>One thing that is looked at or measured before anybody says 'done'.</summary>
/// <param name="Key">Names it for good, in the log and among the words.</param>
/// <param name="From">Where the check itself comes from; its bounds may have sources of their own.</param>
public sealed record CheckItem(string Key, InspectionStage Stage, CheckSubject Subject, CheckMeasure Measure, Provenance From)
{
    public CheckBound? Least { get; init; }

    public CheckBound? Most { get; init; }

    /// <summary>True where the bounds are differences from the plan's figure, which the check of one place adds.</summary>
    public bool FromPlan { get; init; }

    /// <summary>True for a test that only some specifications ask for: a stage passes without it, and fails with it.</summary>
    public bool Optional { get; init; }

    /// <summary>Whether a measured value lies within the tolerance, compared in whole billionths; the ends belong to it.</summary>
    /// <param name="measured">Metres, degrees or days, as the check is measured.</param>
    public bool Passes(double measured)
        => (Least is not { } least || Decide.Billionths(measured) >= Decide.Billionths(least.Value))
           && (Most is not { } most || Decide.Billionths(measured) <= Decide.Billionths(most.Value));
}
