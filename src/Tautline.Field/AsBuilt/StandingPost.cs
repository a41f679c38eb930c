using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.AsBuilt;

/// <summary>A post of a plan.</summary>
/// <param name="Line">Index of its line.</param>
/// <param name="Post">Its own index there.</param>
public readonly record struct PostAt(int Line, int Post);

/// <summary>A post as it stands, beside the post as drawn it is taken for. All measures are level.</summary>
/// <param name="Entry">Who set it, and when.</param>
/// <param name="Line">Index of the line it stands at.</param>
/// <param name="Station">Where on that line it stands, or past its ends.</param>
/// <param name="Off">From the line: above zero to the right of one who walks it forward, below zero to the left.</param>
/// <param name="Drawn">Index of the post as drawn; nothing where the drawing has none there.</param>
/// <param name="Along">From the post as drawn: above zero ahead of it, below zero short of it; zero where there is none.</param>
/// <param name="OtherKind">It was set as a line post where the drawing has a terminal, or the other way round.</param>
public sealed record StandingPost(LogEntry Entry, PostDone Post, int Line, Length Station, Length Off, int? Drawn, Length Along, bool OtherKind)
{
    /// <summary>Less is not told: no tape of the trade reads finer.</summary>
    public static readonly Length Told = Length.FromInches(1.0 / 16);

    /// <summary>Posts are laid out to the nearest half inch along the line: common practice, no source.</summary>
    public static readonly Length LaidOut = Length.FromInches(0.5);

    /// <summary>The bits a length loses on its way through coordinates.</summary>
    private static readonly Length slack = Length.FromNanometres(1_000);

    /// <summary>Not where, or not what, it was drawn as.</summary>
    public bool Differs => Drawn is null || OtherKind || Length.Abs(Off) >= Told || Length.Abs(Along) >= Told;

    /// <summary>Further from the line than a fence may be: <see cref="Standing.OutOfLine"/>.</summary>
    public bool OutOfLine => Length.Abs(Off) > Standing.OutOfLine + slack;

    /// <summary>Moved along the line by more than it was laid out to. No limit is broken by that alone: the bays beside it are held against theirs in the plan.</summary>
    public bool Moved => Length.Abs(Along) > LaidOut + slack;
}

/// <summary>A post that was set where no line of the job runs any more.</summary>
public sealed record LostPost(LogEntry Entry, PostDone Post);
