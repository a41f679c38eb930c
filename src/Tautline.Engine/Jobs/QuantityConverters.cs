using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

/// <summary>A value in a file that is not what belongs there: where it starts, and what was found.</summary>
public sealed record FieldSlip(long Offset, string Expected, string Found);

/// <summary>Lengths are plain numbers of metres. A slip is noted and reading goes on, so that one report names them all.</summary>
public sealed class LengthConverter(List<FieldSlip>? slips) : JsonConverter<Length>
{
    public LengthConverter() : this(null) { }

    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => new(NumberReader.Read(ref reader, "a number of metres", slips));

    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Metres);
}

/// <summary>A grade is a plain number, rise over run.</summary>
public sealed class SlopeConverter(List<FieldSlip>? slips) : JsonConverter<Slope>
{
    public SlopeConverter() : this(null) { }

    public override Slope Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => new(NumberReader.Read(ref reader, "a grade as rise over run, such as 0.12", slips));

    public override void Write(Utf8JsonWriter writer, Slope value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Ratio);
}

/// <summary>Volumes are cubic metres.</summary>
public sealed class VolumeConverter : JsonConverter<Volume>
{
    public override Volume Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, Volume value, JsonSerializerOptions options) => writer.WriteNumberValue(value.CubicMetres);
}

/// <summary>Areas are square metres.</summary>
public sealed class AreaConverter : JsonConverter<Area>
{
    public override Area Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, Area value, JsonSerializerOptions options) => writer.WriteNumberValue(value.SquareMetres);
}

/// <summary>Masses are kilograms.</summary>
public sealed class MassConverter : JsonConverter<Mass>
{
    public override Mass Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetDouble());

    public override void Write(Utf8JsonWriter writer, Mass value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Kilograms);
}

internal static class NumberReader
{
    public static double Read(ref Utf8JsonReader reader, string expected, List<FieldSlip>? slips)
    {
        if (reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out var value) && double.IsFinite(value)) return value;
        if (slips is null) throw new JsonException($"expected {expected}");
        slips.Add(new FieldSlip(reader.TokenStartIndex, expected, Found(ref reader)));
        reader.Skip();
        return double.NaN;
    }

    private static string Found(ref Utf8JsonReader reader) => reader.TokenType switch
    {
        JsonTokenType.String => $"the text \"{reader.GetString()}\"",
        JsonTokenType.Number => "a number that is too large",
        JsonTokenType.StartObject => "an object",
        JsonTokenType.StartArray => "a list",
        var other => other.ToString().ToLowerInvariant(),
    };
}

/// <summary>Whole nanometres inside, metres on paper as every other length.</summary>
public sealed class NanometresAsMetres : JsonConverter<long>
{
    public override long Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new Length(reader.GetDouble()).Nanometres;

    public override void Write(Utf8JsonWriter writer, long value, JsonSerializerOptions options) => writer.WriteNumberValue(Length.FromNanometres(value).Metres);
}
