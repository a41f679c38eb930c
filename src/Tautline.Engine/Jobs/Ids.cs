using System.Text.Json.Serialization;

namespace Tautline.Engine.Jobs;

/// <summary>An id made once, when the thing it names is first entered, and never changed. Compared by ordinal text.</summary>
public interface IId<TSelf> where TSelf : struct, IId<TSelf>
{
    string Value { get; }

    static abstract TSelf From(string value);
}

[JsonConverter(typeof(IdConverter<JobId>))]
public readonly record struct JobId(string Value) : IId<JobId>
{
    public static JobId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<SpecId>))]
public readonly record struct SpecId(string Value) : IId<SpecId>
{
    public static SpecId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<LineId>))]
public readonly record struct LineId(string Value) : IId<LineId>
{
    public static LineId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<VertexId>))]
public readonly record struct VertexId(string Value) : IId<VertexId>
{
    public static VertexId From(string value) => new(value);
    public override string ToString() => Value;
}

/// <summary>The stretch that leaves a vertex. It keeps its id when a vertex is put into the middle of it: the first part keeps it.</summary>
[JsonConverter(typeof(IdConverter<LegId>))]
public readonly record struct LegId(string Value) : IId<LegId>
{
    public static LegId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<GateId>))]
public readonly record struct GateId(string Value) : IId<GateId>
{
    public static GateId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<ObstacleId>))]
public readonly record struct ObstacleId(string Value) : IId<ObstacleId>
{
    public static ObstacleId From(string value) => new(value);
    public override string ToString() => Value;
}

/// <summary>A post that stands in the ground.</summary>
[JsonConverter(typeof(IdConverter<BuiltPostId>))]
public readonly record struct BuiltPostId(string Value) : IId<BuiltPostId>
{
    public static BuiltPostId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<PinId>))]
public readonly record struct PinId(string Value) : IId<PinId>
{
    public static PinId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<WorkId>))]
public readonly record struct WorkId(string Value) : IId<WorkId>
{
    public static WorkId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<TemporaryId>))]
public readonly record struct TemporaryId(string Value) : IId<TemporaryId>
{
    public static TemporaryId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<StockId>))]
public readonly record struct StockId(string Value) : IId<StockId>
{
    public static StockId From(string value) => new(value);
    public override string ToString() => Value;
}

[JsonConverter(typeof(IdConverter<HangId>))]
public readonly record struct HangId(string Value) : IId<HangId>
{
    public static HangId From(string value) => new(value);
    public override string ToString() => Value;
}
