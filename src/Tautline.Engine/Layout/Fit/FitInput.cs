namespace Tautline.Engine.Layout.Fit;

/// <summary>A post that carries the top line.</summary>
/// <param name="Station">Level distance along the line, metres; rises strictly from post to post.</param>
/// <param name="Terminal">Fabric ends or turns here, so the rail may change its slope as it likes.</param>
/// <param name="Pinned">The height the top line has here and keeps, metres; nothing where it is free.</param>
/// <param name="LongestAbove">How far above the ground the top line may lie with the post's stock length, metres; endless where nobody asks.</param>
public readonly record struct FitPost(double Station, bool Terminal = false, double? Pinned = null, double LongestAbove = double.PositiveInfinity);

/// <summary>A corner of the ground under the line: station and height in metres. Between two of them the ground is straight.</summary>
public readonly record struct GroundVertex(double Station, double Height);

/// <summary>What may be done where following the ground does not do. To follow is always allowed.</summary>
[Flags]
public enum Remedies
{
    None = 0,

    /// <summary>A post longer than its stock class.</summary>
    LongerPost = 1,

    /// <summary>The fabric goes below the least gap: its bottom is trimmed or buried.</summary>
    TrimOrBury = 2,

    /// <summary>The gap is larger than allowed and closed with a piece of its own.</summary>
    ClosurePiece = 4,

    /// <summary>The ground is cut or filled.</summary>
    Grading = 8,

    All = LongerPost | TrimOrBury | ClosurePiece | Grading,
}

/// <summary>How the top line goes over the ground.</summary>
public enum FitMode
{
    /// <summary>Near the wanted gap at every post, as far as the limits let it.</summary>
    Follow,

    /// <summary>As few and as small changes of slope as the limits let it.</summary>
    Smooth,

    /// <summary>Every bay level; the line goes up and down in steps.</summary>
    Stepped,
}

/// <summary>The limits and prices of a fit. Lengths in metres, slopes as rise over run.</summary>
/// <param name="FabricHeight">Height of the fabric square to the rail.</param>
/// <param name="LeastGap">Least gap between the fabric's bottom and the ground; negative where the fabric goes into the ground.</param>
/// <param name="MostGap">Largest gap; not below the least.</param>
/// <param name="WantedGap">The gap the posts are set for where there is a choice.</param>
/// <param name="GreatestRake">Greatest slope of the rail, up or down; above zero.</param>
/// <param name="GreatestBend">Largest change of slope the fabric rolls over at a line post; zero or above.</param>
/// <param name="CutCost">Price of a metre along the line by which the ground is a metre too high; above zero.</param>
/// <param name="FillCost">The same where it is too low; above zero.</param>
public sealed record FitLimits(
    double FabricHeight, double LeastGap, double MostGap, double WantedGap, double GreatestRake, double GreatestBend, double CutCost = 1, double FillCost = 1)
{
    /// <summary>What a square metre of deviation from the wanted gap weighs against a squared change of slope; nothing takes the mode's own.</summary>
    public double? GapWeight { get; init; }
}

/// <summary>One line to fit.</summary>
/// <param name="Posts">At least two, in order; the first and the last are terminals whatever they say.</param>
/// <param name="Ground">In order of station, at least two, from the first post to the last; two of one station are a wall.</param>
/// <param name="TrenchWidth">Width over which ground is cut or filled, for volumes, metres.</param>
public sealed record FitInput(
    IReadOnlyList<FitPost> Posts, IReadOnlyList<GroundVertex> Ground, FitLimits Limits, Remedies Allowed = Remedies.All, FitMode Mode = FitMode.Smooth, double TrenchWidth = 0.3);
