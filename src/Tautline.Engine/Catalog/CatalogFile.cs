using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tautline.Engine.Catalog;

// The catalogue and rule files as they lie on disk: every number carries its unit in its name, every row its source.

internal sealed record SourceFile(string Title, string Edition);

internal sealed record FabricFile(
    double MeshIn, string Gauge, double WireIn, IReadOnlyList<double> HeightsIn, string Source, string Clause, Confidence Confidence);

internal sealed record DiamondFile(double MeshIn, double HeightIn, double Diamonds, string Source, string Clause, Confidence Confidence);

internal sealed record SectionFile(
    string Id, string Group, string TradeSize, double OdIn, double WallIn, double WeightLbPerFt, string Source, string Clause,
    Confidence Confidence, string Form = "pipe");

internal sealed record PostSizeFile(
    double HeightToFt, double LineOdIn, double TerminalOdIn, string Source, string Clause, Confidence Confidence);

internal sealed record GatePostFile(
    double LeafToFt, double OdIn, string Source, string Clause, Confidence Confidence, double FenceOverFt = 0, double FenceToFt = 1000,
    double HoleDiameterIn = 0, double HoleDepthIn = 0);

internal sealed record RailFile(double OdIn, string Use, string Source, string Clause, Confidence Confidence);

internal sealed record PartFile(string Id, string Name, string Source, string Clause, Confidence Confidence);

internal sealed record CatalogFile(
    IReadOnlyDictionary<string, SourceFile> Sources, IReadOnlyList<FabricFile> Fabrics, IReadOnlyList<DiamondFile> Diamonds,
    IReadOnlyList<SectionFile> Sections, IReadOnlyList<PostSizeFile> PostSizes, IReadOnlyList<GatePostFile> GatePosts,
    IReadOnlyList<RailFile> Rails, IReadOnlyList<PartFile> Parts);

/// <param name="UpTo">For a limit of several steps, where this one ends; left out for the last.</param>
/// <param name="EndExcluded">True where the end itself belongs to the next step.</param>
internal sealed record RuleFile(
    string Key, double Value, string Unit, string Condition, string Source, string Clause, Confidence Confidence, double? UpTo = null,
    string? UpToUnit = null, bool EndExcluded = false);

internal sealed record LadderFile(string Key, IReadOnlyList<double> SizesIn, string Source, string Clause, Confidence Confidence);

/// <param name="Extends">The built-in set whose limits hold where the file states none.</param>
internal sealed record RuleSetFile(
    string Name, string Title, IReadOnlyDictionary<string, SourceFile> Sources, IReadOnlyList<RuleFile> Rules,
    IReadOnlyList<LadderFile>? Ladders, string? Extends = null);

internal sealed class ConfidenceConverter : JsonConverter<Confidence>
{
    public override Confidence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetString() switch
    {
        "published" => Confidence.Published,
        "calculated" => Confidence.Calculated,
        "from-memory" => Confidence.FromMemory,
        "common-practice" => Confidence.CommonPractice,
        var other => throw new JsonException($"confidence is published, calculated, from-memory or common-practice, found '{other}'"),
    };

    public override void Write(Utf8JsonWriter writer, Confidence value, JsonSerializerOptions options) => writer.WriteStringValue(Text(value));

    public static string Text(Confidence value) => value switch
    {
        Confidence.Published => "published",
        Confidence.Calculated => "calculated",
        Confidence.FromMemory => "from-memory",
        Confidence.CommonPractice => "common-practice",
        _ => "as-specified",
    };
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, Converters = [typeof(ConfidenceConverter)])]
[JsonSerializable(typeof(CatalogFile))]
[JsonSerializable(typeof(RuleSetFile))]
internal sealed partial class CatalogJson : JsonSerializerContext;
