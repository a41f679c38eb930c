using System.Text.Json;
using System.Text.Json.Serialization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Jobs;

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UseStringEnumConverter = true)]
[JsonSerializable(typeof(Job))]
internal sealed partial class JobJson : JsonSerializerContext
{
    /// <summary>The same contract for reading and writing; slips of a field are gathered where a list is given.</summary>
    public static JobJson With(List<FieldSlip>? slips) => new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = false,
        WriteIndented = true,
        NewLine = "\n",
        Converters =
        {
            new LengthConverter(slips), new SlopeConverter(slips), new JsonStringEnumConverter<UnitSystem>(JsonNamingPolicy.KebabCaseLower),
        },
    });
}
