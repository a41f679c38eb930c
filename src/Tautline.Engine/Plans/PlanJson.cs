using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>
/// A plan as canonical JSON: metres, cubic metres and kilograms, properties in a fixed order, numbers in their shortest form that
/// reads back equal. Its SHA-256 is the plan hash.
/// </summary>
public static class PlanFile
{
    private static readonly PlanJson compact = PlanJson.With(indented: false);
    private static readonly PlanJson indented = PlanJson.With(indented: true);

    /// <summary>The canonical bytes, without line breaks.</summary>
    public static byte[] Canonical(Plan plan) => JsonSerializer.SerializeToUtf8Bytes(plan, compact.Plan);

    /// <summary>The same for people to read.</summary>
    public static byte[] Indented(Plan plan) => [.. JsonSerializer.SerializeToUtf8Bytes(plan, indented.Plan), (byte)'\n'];

    /// <summary>SHA-256 of the canonical bytes in small hexadecimal digits.</summary>
    public static string Hash(Plan plan) => Convert.ToHexStringLower(SHA256.HashData(Canonical(plan)));
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(Plan))]
internal sealed partial class PlanJson : JsonSerializerContext
{
    public static PlanJson With(bool indented) => new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        WriteIndented = indented,
        NewLine = "\n",
        Converters =
        {
            new LengthConverter(), new SlopeConverter(), new VolumeConverter(), new AreaConverter(), new MassConverter(), new FigureConverter(),
            new PlaceConverter(), Words<Layout.PostKind>(), Words<Layout.Support>(), Words<Site.GateKind>(), Words<Site.WorkKind>(), Words<Fabric.LongEdge>(), Words<Takeoff.QuantityUnit>(),
            Words<Takeoff.PurchaseUnit>(), Words<ProblemCode>(), Words<Severity>(), Words<Catalog.Confidence>(),
            Words<Layout.Fit.FitMode>(), Words<Layout.Fit.FitLimit>(), Words<Layout.Fit.Remedies>(), Words<HangMethod>(), Words<HangReason>(), Words<Fabric.Rolls.PieceTurn>(),
            Words<Fabric.Rolls.SpliceMatch>(), Words<Fabric.Rolls.EndState>(), Words<Fabric.Rolls.RollFindingKind>(),
        },
    });

    private static JsonStringEnumConverter<T> Words<T>() where T : struct, Enum => new(JsonNamingPolicy.KebabCaseLower);
}

/// <summary>A figure in a problem: text as it is, a number with its unit's powers of metre and kilogram.</summary>
internal sealed class FigureConverter : JsonConverter<Figure>
{
    public override Figure Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => throw new NotSupportedException("plans are written, not read");

    public override void Write(Utf8JsonWriter writer, Figure value, JsonSerializerOptions options)
    {
        if (value.Text is { } text) writer.WriteStringValue(text);
        else if (double.IsFinite(value.Value)) writer.WriteNumberValue(value.Value);
        else writer.WriteStringValue("not finite");
    }
}

internal sealed class PlaceConverter : JsonConverter<Place>
{
    public override Place Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => throw new NotSupportedException("plans are written, not read");

    public override void Write(Utf8JsonWriter writer, Place value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        if (value.Path.Length > 0) writer.WriteString("path", value.Path);
        if (value.Line is { } line) writer.WriteString("line", line.Value);
        if (value.Station is { } station && double.IsFinite(station.Metres)) writer.WriteNumber("station", station.Metres);
        writer.WriteEndObject();
    }
}
