using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>Where the heights under a line come from.</summary>
public sealed record LineGround
{
    public const string FromShots = "shots";
    public const string FromSurface = "surface";
    public const string FromGrades = "grades";

    /// <summary>'shots', 'surface' (the job's) or 'grades' of the legs. Left out: shots where there are any, else the surface, else grades.</summary>
    public string? From { get; init; }

    /// <summary>In the order they were taken.</summary>
    public IReadOnlyList<GroundShot> Shots { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>
/// One place of the ground along a leg. Either its height over the job's datum is known, or a rod was read there. A rod reading on a place of
/// known height sets the instrument for the shots after it; so does a second reading on a place just read, after the instrument was moved.
/// </summary>
public sealed record GroundShot
{
    public required LegId Leg { get; init; }

    /// <summary>Level distance from the start of the leg.</summary>
    public required Length At { get; init; }

    /// <summary>Over the job's datum.</summary>
    public Length? Height { get; init; }

    /// <summary>Read on the rod that stands here.</summary>
    public Length? Rod { get; init; }

    /// <summary>Read on the rod that stands here still, after the instrument was moved.</summary>
    public Length? Again { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>How the fence goes over the ground.</summary>
public sealed record LineFit
{
    public const string LongerPost = "longer-post";
    public const string Trim = "trim";
    public const string Closure = "closure";
    public const string Grading = "grading";

    /// <summary>'smooth' (also where left out), 'follow' or 'stepped'.</summary>
    public string? Mode { get; init; }

    /// <summary>What may be done where following the ground does not do: 'longer-post', 'trim', 'closure', 'grading'. Left out: longer posts and grading.</summary>
    public IReadOnlyList<string>? Remedies { get; init; }

    /// <summary>The gap under the fabric that posts are set for; left out, halfway between the least and the largest.</summary>
    public Length? Gap { get; init; }

    /// <summary>'yes' or 'no': whether a terminal may be put where the fabric cannot roll over a break of grade; 'yes' where left out.</summary>
    public string? BreakPosts { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
