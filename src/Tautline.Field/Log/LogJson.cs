using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Field.Log;

/// <summary>An entry as text: one JSON object, lengths in metres.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(LogEntry))]
public sealed partial class LogJson : JsonSerializerContext
{
    private static readonly LogJson contract = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new MetresConverter() },
    });

    public static byte[] Write(LogEntry entry) => JsonSerializer.SerializeToUtf8Bytes(entry, contract.LogEntry);

    /// <summary>Nothing where the text is no entry; then it says why.</summary>
    public static LogEntry? Read(ReadOnlySpan<byte> utf8, out string fault)
    {
        fault = "";
        try
        {
            return JsonSerializer.Deserialize(utf8, contract.LogEntry) is { } entry && Names(entry, out fault) ? entry : null;
        }
        catch (JsonException slip)
        {
            fault = $"{slip.Path ?? "$"} is not what belongs there";
            return null;
        }
    }

    private static bool Names(LogEntry entry, out string fault)
    {
        fault = entry.Device is not { Length: > 0 } ? "$.device is empty" : entry.Sequence < 1 ? "$.sequence is below 1" : entry.Tick < 0 ? "$.tick is below 0" : "";
        return fault.Length == 0;
    }
}

/// <summary>Metres, finite.</summary>
internal sealed class MetresConverter : JsonConverter<Length>
{
    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out var metres) && double.IsFinite(metres) ? new Length(metres) : throw new JsonException();

    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Metres);
}
