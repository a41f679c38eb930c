using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Requests typed by hand: 2-in fabric at an advance of 1.40 in, 50-ft rolls of 428 pickets.</summary>
internal static class Fence
{
    public const long Foot = 304_800_000;
    public const long Advance = 35_560_000;

    /// <summary>1.40 in times 1.08: the span of advances before a roll is calibrated.</summary>
    public const long WidestAdvance = 38_404_800;

    public static FabricKind Kind(bool calibrated = true, bool turnsOver = false) => new("6", Advance, calibrated ? Advance : WidestAdvance, turnsOver, 4);

    public static NewRolls Rolls(string id = "new", long feet = 50, int? count = null, string of = "a", int? counted = null)
        => new(id, $"lot {id}", "6", of, feet * Foot, count, counted);

    public static FabricPull Pull(string id, long fromFeet, long feet, int low, int high) => new(id, "6", feet * Foot, new(low, high), fromFeet * Foot, (fromFeet + feet) * Foot);

    public static FabricPull Pull(string id, long fromFeet, long feet, int pickets) => Pull(id, fromFeet, feet, pickets, pickets);

    public static RollRequest Request(IReadOnlyList<FabricPull> pulls, params NewRolls[] rolls)
        => new() { Kinds = [Kind()], Pulls = pulls, New = rolls.Length > 0 ? rolls : [Rolls()] };

    /// <summary>120 ft is 1028.6 pickets of 1.40 in, so 1029.</summary>
    public static RollRequest TwoPulls() => Request([Pull("one", 0, 120, 1029), Pull("two", 121, 120, 1029)]);

    public static IEnumerable<string> Pieces(RollPlan plan, int pull) => plan.Feeds[pull].Pieces.Select(p => $"{p.Roll}: {p.From.High}-{p.To.High}");
}
