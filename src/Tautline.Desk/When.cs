using System.Globalization;

namespace Tautline.Desk;

/// <summary>Times and sizes in lists.</summary>
public static class When
{
    /// <summary>In the device's time: '2026-03-09 14:05'.</summary>
    public static string Text(DateTimeOffset at) => at.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>'12 kB', '3.4 MB'.</summary>
    public static string Size(long bytes) => bytes < 1_000_000
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
        : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.0} MB");
}
