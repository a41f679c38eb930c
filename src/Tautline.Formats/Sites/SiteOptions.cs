using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;

namespace Tautline.Formats.Sites;

/// <summary>How much a reader takes in before it refuses. Figures in a file are checked against them before memory is taken.</summary>
public sealed record SiteLimits
{
    /// <summary>Bytes of a file, or of one entry of an archive once unpacked.</summary>
    public long Bytes { get; init; } = 2L << 30;

    /// <summary>Bytes of text coordinates and of GeoJSON, which are held whole.</summary>
    public long WholeBytes { get; init; } = 256L << 20;

    /// <summary>Points and lines.</summary>
    public int Features { get; init; } = 3_000_000;

    /// <summary>Positions of all of them.</summary>
    public int Vertices { get; init; } = 20_000_000;

    /// <summary>How deep blocks may stand in blocks, and elements in elements.</summary>
    public int Depth { get; init; } = 64;
}

/// <summary>What a reader is told beside the file.</summary>
public sealed record SiteOptions
{
    /// <summary>The file's name, for messages; its ending helps to tell the format.</summary>
    public string SourceName { get; init; } = "file";

    /// <summary>The format; null to tell it by the file's first bytes and its name.</summary>
    public SiteFormat? Format { get; init; }

    /// <summary>
    /// Curves that are no circles are put in chords that leave them by no more than this: metres where the file says its unit, else the file's own unit.
    /// </summary>
    public double FlattenTolerance { get; init; } = 0.005;

    /// <summary>How text coordinates are laid out; what is null is found out or asked.</summary>
    public SurveyPointOptions Points { get; init; } = new();

    public SiteLimits Limits { get; init; } = new();

    /// <summary>Asked now and then; reading stops with <see cref="OperationCanceledException"/> when it is cancelled.</summary>
    public CancellationToken Cancelled { get; init; }

    /// <summary>Told now and then how many bytes have been read.</summary>
    public Action<long>? Progress { get; init; }
}

/// <summary>Puts answers, as texts, into options: "PNEZD", "leave-out".</summary>
public static class SiteAnswers
{
    /// <summary>The options with an answer that changes how the file is read; null when the text is no answer to it.</summary>
    public static SiteOptions? Apply(SiteOptions options, SiteQuestionKind question, string answer)
    {
        var kind = question == SiteQuestionKind.Columns ? GroundQuestionKind.Columns : GroundQuestionKind.PlaceHolders;
        if (question == SiteQuestionKind.System) return null;
        return GroundAnswers.Apply(new GroundOptions { Points = options.Points }, kind, answer) is { } applied ? options with { Points = applied.Points } : null;
    }
}
