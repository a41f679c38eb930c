using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tautline.Field.Log;

/// <summary>Work that was not in the job, agreed at the hole before it goes on: so much at so much, and who signed. The words and the place stand in the entry.</summary>
public sealed record ChangeOrder
{
    public required decimal Quantity { get; init; }

    /// <summary>What the price is for: hole, hour, foot.</summary>
    public required string Unit { get; init; }

    /// <summary>Agreed price of one unit, whole cents of the job's money.</summary>
    public required long UnitCents { get; init; }

    /// <summary>Quantity times price, rounded once to the cent, half a cent up.</summary>
    public required long TotalCents { get; init; }

    /// <summary>Who signed, in letters.</summary>
    public required string Signer { get; init; }

    /// <summary>The signature: each stroke x and y one after the other, in thousandths of the pad's width from its upper left corner.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Strokes { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
