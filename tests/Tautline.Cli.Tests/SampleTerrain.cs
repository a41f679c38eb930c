using System.Globalization;
using System.Text;

namespace Tautline.Cli.Tests;

/// <summary>
/// Makes the terrain of samples/larkspur.asc: a slope with a knoll, a draw across it and a bank, as a grid of 2-m cells. Of our own making and like
/// no place on earth.
/// </summary>
internal static class SampleTerrain
{
    private const int Columns = 75;
    private const int Rows = 60;
    private const double Cell = 2;

    /// <summary>Heights in metres to the centimetre; a corner in the north-west is not known.</summary>
    public static string AsciiGrid()
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"ncols {Columns}\nnrows {Rows}\nxllcorner 0\nyllcorner 0\ncellsize {Cell}\nNODATA_value -9999\n"));
        for (var row = 0; row < Rows; row++)
            text.AppendJoin(' ', Enumerable.Range(0, Columns).Select(column => Shown((column + 0.5) * Cell, (Rows - row - 0.5) * Cell))).Append('\n');
        return text.ToString();
    }

    private static string Shown(double east, double north)
        => east < 14 && north > 104 ? "-9999" : Height(east, north).ToString("0.00", CultureInfo.InvariantCulture);

    private static double Height(double east, double north)
    {
        var slope = 212 + 0.05 * east - 0.03 * north;
        var knoll = 5 / (1 + (Square(east - 55) + Square(north - 45)) / 500);
        var draw = 2.6 / (1 + Square(east - 92 - 0.25 * north) / 40);
        var bank = north - 70 - 0.1 * east;
        return slope + knoll - draw + 1.4 * bank / Math.Sqrt(16 + bank * bank);
    }

    private static double Square(double x) => x * x;
}
