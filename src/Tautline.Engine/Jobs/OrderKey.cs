using System.Text.Json;
using System.Text.Json.Serialization;

namespace Tautline.Engine.Jobs;

/// <summary>
/// Where a thing stands among its siblings, as text that sorts by ordinal comparison, so that something can always be put
/// between two others without renumbering them. Digits are 0-9, a-z; a key never ends in 0.
/// </summary>
[JsonConverter(typeof(OrderKeyConverter))]
public readonly record struct OrderKey(string Value) : IComparable<OrderKey>
{
    private const string Digits = "0123456789abcdefghijklmnopqrstuvwxyz";

    public int CompareTo(OrderKey other) => string.CompareOrdinal(Value, other.Value);

    /// <summary>A well-formed key: at least one digit, the last one not 0.</summary>
    public bool IsWellFormed => !string.IsNullOrEmpty(Value) && Value[^1] != '0' && Value.All(Digits.Contains);

    /// <summary>The first key of an empty list.</summary>
    public static OrderKey First => new("i");

    public static OrderKey After(OrderKey last) => Between(last, null);

    public static OrderKey Before(OrderKey first) => Between(null, first);

    /// <summary>Evenly spread keys for <paramref name="count"/> things entered at once, all of one length.</summary>
    public static IReadOnlyList<OrderKey> Spread(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var width = 1;
        for (long room = Digits.Length; room <= count + 1L; room *= Digits.Length) width++;
        long capacity = 1;
        for (var i = 0; i < width; i++) capacity *= Digits.Length;
        return [.. Enumerable.Range(1, count).Select(i => new OrderKey(Digit36(capacity * i / (count + 1L), width) + "i"))];
    }

    /// <summary>A key strictly between two others; a missing one means the open end of the list.</summary>
    /// <exception cref="ArgumentException">The first is not below the second, or one is not well formed.</exception>
    public static OrderKey Between(OrderKey? low, OrderKey? high)
    {
        if (low is { IsWellFormed: false } || high is { IsWellFormed: false })
            throw new ArgumentException($"order keys are digits and small letters not ending in 0: '{low?.Value}', '{high?.Value}'");
        if (low is { } l && high is { } h && l.CompareTo(h) >= 0)
            throw new ArgumentException($"'{l.Value}' does not come before '{h.Value}'");
        return new OrderKey(Middle(low?.Value ?? "", high?.Value));
    }

    private static string Middle(string low, string? high)
    {
        var key = new System.Text.StringBuilder();
        for (var i = 0; ; i++)
        {
            var a = i < low.Length ? Digits.IndexOf(low[i]) : 0;
            var b = high is null ? Digits.Length : i < high.Length ? Digits.IndexOf(high[i]) : 0;
            if (b - a > 1) return key.Append(Digits[(a + b) / 2]).ToString();
            key.Append(Digits[a]);
            if (b - a == 1) high = null; // the new key is now below the upper one whatever follows
        }
    }

    private static string Digit36(long value, int width)
    {
        var text = new char[width];
        for (var i = width - 1; i >= 0; i--, value /= Digits.Length) text[i] = Digits[(int)(value % Digits.Length)];
        return new string(text);
    }
}

public sealed class OrderKeyConverter : JsonConverter<OrderKey>
{
    public override OrderKey Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        => reader.TokenType == JsonTokenType.String
            ? new OrderKey(reader.GetString()!)
            : throw new JsonException($"an order key is text in quotes, found {reader.TokenType}");

    public override void Write(Utf8JsonWriter writer, OrderKey value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value ?? "");
}
