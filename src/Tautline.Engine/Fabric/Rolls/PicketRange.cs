using System.Text.Json.Serialization;
using Tautline.Engine.Jobs;

namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// A number of pickets: one figure once the roll is calibrated or counted, before that one for the widest advance (Low) and one for the
/// narrowest (High). What a pull or a roll counts is no less at the narrowest; what is left over can be either way round.
/// </summary>
public readonly record struct PicketRange(int Low, int High)
{
    [JsonIgnore]
    public bool IsExact => Low == High;

    [JsonIgnore]
    public int Least => Math.Min(Low, High);

    [JsonIgnore]
    public int Most => Math.Max(Low, High);

    public static PicketRange Exactly(int pickets) => new(pickets, pickets);
}

/// <summary>A length or station in whole nanometres that hangs on a count of pickets, so from the least to the most until that is known.</summary>
public readonly record struct NanometreRange(
    [property: JsonConverter(typeof(NanometresAsMetres))] long Low, [property: JsonConverter(typeof(NanometresAsMetres))] long High)
{
    public static NanometreRange Of(long one, long other) => new(Math.Min(one, other), Math.Max(one, other));

    [JsonIgnore]
    public bool IsExact => Low == High;
}

/// <summary>What stands at the top of an end of fabric; it changes from each picket to the next, and a splice needs one of each.</summary>
public enum EndState { Half, Whole }
