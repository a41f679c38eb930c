using System.Collections.Immutable;
using System.Text.Json;

namespace Tautline.Formats.Coordinates;

/// <summary>From where heights count, and which way.</summary>
internal enum HeightKind
{
    /// <summary>Up, from some definition of the sea.</summary>
    Height,

    /// <summary>Down.</summary>
    Depth,

    /// <summary>Up, from the ellipsoid: up to 100 m off from the sea, by amounts that hardly change over a site.</summary>
    Ellipsoid,
}

/// <summary>A numbered system of heights. Its unit is null where the number does not settle it.</summary>
internal sealed record HeightSystem(int EpsgCode, string Name, LinearUnit? Unit, HeightKind Kind, string Source)
{
    private const string ResourceName = "height_systems.json";
    private static readonly Lazy<ImmutableDictionary<int, HeightSystem>> Loaded = new(Load);

    /// <summary>The system of a number; null when it is not among those known.</summary>
    public static HeightSystem? Find(int code) => Loaded.Value.GetValueOrDefault(code);

    private static ImmutableDictionary<int, HeightSystem> Load()
    {
        using var stream = typeof(HeightSystem).Assembly.GetManifestResourceStream(ResourceName)
            ?? throw new InvalidOperationException($"The resource {ResourceName} is missing from the build.");
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.GetProperty("heights").EnumerateArray().Select(Row).ToImmutableDictionary(s => s.EpsgCode);
    }

    private static HeightSystem Row(JsonElement row)
    {
        string? Text(string name) => row.GetProperty(name).GetString();
        var kind = Enum.Parse<HeightKind>(Text("kind")!, ignoreCase: true);
        return new(row.GetProperty("epsg").GetInt32(), Text("name")!, UnitOf(Text("unit")), kind, Text("source")!);
    }

    private static LinearUnit? UnitOf(string? name) => name switch
    {
        null => null,
        "metre" => LinearUnit.Metre,
        "foot" => LinearUnit.Foot,
        "us-survey-foot" => LinearUnit.SurveyFoot,
        _ => throw new InvalidOperationException($"{ResourceName}: unit '{name}' is none of metre, foot, us-survey-foot."),
    };
}
