namespace Tautline.Field.Log;

/// <summary>What names a fact for good: the device it was entered on and its number there, from 1. Ordered by device as ordinal text, then number.</summary>
public readonly record struct LogKey(string Device, long Sequence) : IComparable<LogKey>
{
    public int CompareTo(LogKey other)
        => string.CompareOrdinal(Device, other.Device) is not 0 and var order ? order : Sequence.CompareTo(other.Sequence);

    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Device}/{Sequence}");

    public static bool operator <(LogKey a, LogKey b) => a.CompareTo(b) < 0;
    public static bool operator >(LogKey a, LogKey b) => a.CompareTo(b) > 0;
    public static bool operator <=(LogKey a, LogKey b) => a.CompareTo(b) <= 0;
    public static bool operator >=(LogKey a, LogKey b) => a.CompareTo(b) >= 0;
}
