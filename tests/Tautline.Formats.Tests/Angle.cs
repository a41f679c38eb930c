using System.Globalization;

namespace Tautline.Formats.Tests;

/// <summary>Reads the published angles of the test cases, apart from the code under test.</summary>
internal static class Angle
{
    public static double Of(string degreesMinutesSeconds)
    {
        var sign = degreesMinutesSeconds[0] == '-' ? -1 : 1;
        var parts = degreesMinutesSeconds.Trim('-').Split('-').Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
        return sign * (parts[0] + parts[1] / 60 + parts[2] / 3600);
    }
}
