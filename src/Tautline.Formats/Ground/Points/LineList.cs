using System.Globalization;

namespace Tautline.Formats.Ground.Points;

/// <summary>Names lines of a file for people.</summary>
internal static class LineList
{
    private const int Named = 5;

    /// <summary>"14, 20, 33, 34, 35 and 26 more".</summary>
    public static string Of(IEnumerable<int> lines)
    {
        var all = lines.ToList();
        var first = string.Join(", ", all.Take(Named).Select(l => l.ToString(CultureInfo.InvariantCulture)));
        return all.Count <= Named ? first : string.Create(CultureInfo.InvariantCulture, $"{first} and {all.Count - Named} more");
    }
}
