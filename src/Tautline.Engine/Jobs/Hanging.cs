using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>Fabric at hand or on order: rolls of one lot and length, or a remnant in the yard. Without any, rolls are bought as the spec has them.</summary>
public sealed record RollStock
{
    public required StockId Id { get; init; }

    /// <summary>The spec whose fabric it is.</summary>
    public required SpecId Spec { get; init; }

    public required Length Length { get; init; }

    /// <summary>How many there are; left out, as many as are wanted can be bought. A remnant is one.</summary>
    public int? Count { get; init; }

    /// <summary>True for what is left of an opened roll.</summary>
    public bool Remnant { get; init; }

    /// <summary>Lot as it stands on the tag.</summary>
    public string Lot { get; init => field = value ?? ""; } = "";

    /// <summary>Diamonds counted over the height, where the lot differs from the published count: such lots are not spliced.</summary>
    public double? Diamonds { get; init; }

    /// <summary>The hand its pickets are coiled in, 'left' or 'right': lots of different hands are not spliced.</summary>
    public string? Coil { get; init; }

    /// <summary>State of the end that comes off first, 'whole' or 'half', where somebody looked.</summary>
    public string? First { get; init; }

    /// <summary>State of the other end.</summary>
    public string? Far { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>What the crew saw of a roll the plan opens, before it was cut.</summary>
public sealed record RollReport
{
    /// <summary>The stock it is from; of rolls bought for a spec 'roll of' and the spec.</summary>
    public required string Stock { get; init; }

    /// <summary>Which of them, counted from 1 as the plan opens them.</summary>
    public required int Number { get; init; }

    /// <summary>State of the end that comes off first: 'whole' or 'half'.</summary>
    public string? First { get; init; }

    /// <summary>State of the other end.</summary>
    public string? Far { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>How the run that holds a place is hung.</summary>
public sealed record HangNote
{
    public required HangId Id { get; init; }

    public required LegId Leg { get; init; }

    /// <summary>Level distance from the start of the leg to any place of the run.</summary>
    public required Length At { get; init; }

    /// <summary>'forward' along the line or 'back'; forward where left out.</summary>
    public string? Direction { get; init; }

    /// <summary>'machine' or 'hand', where the site leaves no choice; by length where left out.</summary>
    public string? Method { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
