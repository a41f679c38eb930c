using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tautline.Field.Log;

/// <summary>A photo by its content: the pixels lie beside the log, under this name.</summary>
public sealed record PhotoRef
{
    /// <summary>SHA-256 of its bytes, 64 hexadecimal digits in small letters.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Pixels, upright.</summary>
    public required int Width { get; init; }

    /// <summary>Pixels, upright.</summary>
    public required int Height { get; init; }

    public required long Bytes { get; init; }

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>Material that was built in, or spoilt.</summary>
public sealed record MaterialUsed
{
    /// <summary>Id in the catalogue; empty where it is none of the job's parts.</summary>
    public string Part { get; init => field = value ?? ""; } = "";

    /// <summary>What it is called.</summary>
    public required string Called { get; init; }

    /// <summary>Above zero.</summary>
    public required decimal Quantity { get; init; }

    public string Unit { get; init => field = value ?? ""; } = "";

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>The weather somebody saw; nothing is worked out from it.</summary>
public sealed record WeatherSeen
{
    /// <summary>One of <see cref="Skies"/>; others are kept and shown as they are.</summary>
    public required string Sky { get; init; }

    /// <summary>One of <see cref="Winds"/>; others are kept and shown as they are.</summary>
    public string Wind { get; init => field = value ?? ""; } = "";

    /// <summary>Of the air, degrees Celsius.</summary>
    public double? Celsius { get; init; }

    public static IReadOnlyList<string> Skies { get; } = ["clear", "cloud", "rain", "snow", "fog", "storm"];

    public static IReadOnlyList<string> Winds { get; } = ["calm", "breeze", "strong"];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}

/// <summary>A safety talk at the truck; what was talked about stands in the entry's text.</summary>
public sealed record TalkHeld
{
    /// <summary>Who was there.</summary>
    public IReadOnlyList<string> People { get; init => field = value ?? []; } = [];

    [JsonExtensionData]
    public Dictionary<string, JsonElement>? Extra { get; set; }
}
