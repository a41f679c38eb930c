using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tautline.Engine.Jobs;

/// <summary>An id is a plain string in a job file.</summary>
public sealed class IdConverter<T> : JsonConverter<T> where T : struct, IId<T>
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => reader.TokenType == JsonTokenType.String
            ? T.From(reader.GetString()!)
            : throw new JsonException($"an id is text in quotes, found {reader.TokenType}");

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}
