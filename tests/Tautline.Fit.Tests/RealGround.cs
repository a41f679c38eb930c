using System.Globalization;
using System.Xml.Linq;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>Profiles along straight lines over the shared surfaces, in metres, a vertex each step.</summary>
internal static class RealGround
{
    /// <summary>The named profiles: three over the gully grid, three over the lot's triangles, two over the subdivision's.</summary>
    public static IReadOnlyList<GroundVertex> Profile(string name) => name switch
    {
        "gully along" => Along(Gully(), (559766.5, 4380468), (559766.5, 4380312), 1),
        "gully across" => Along(Gully(), (559740, 4380425), (559778, 4380424), 1),
        "gully aslant" => Along(Gully(), (559743, 4380460), (559783, 4380322), 1),
        "lot aslant" => Along(Lot(), (4978, 4964), (4966, 5025), 0.3),
        "lot back" => Along(Lot(), (4972, 4972), (4971, 5024), 0.3),
        "lot east" => Along(Lot(), (4968, 4971), (4968, 5019), 0.3),
        "subdivision along" => Along(Subdivision(), (1500, 0), (1500, 900), 3, Foot),
        "subdivision aslant" => Along(Subdivision(), (1200, -300), (1800.5, 640.25), 3, Foot),
        _ => throw new ArgumentException(name),
    };

    private const double Foot = 0.3048;

    // Height of the first surface point found at a place, or nothing.
    private delegate double? Surface(double a, double b);

    private static List<GroundVertex> Along(Surface surface, (double A, double B) from, (double A, double B) to, double step, double unit = 1)
    {
        var length = Math.Sqrt((to.A - from.A) * (to.A - from.A) + (to.B - from.B) * (to.B - from.B));
        var count = (int)(length / step);
        List<GroundVertex> profile = [];
        for (var i = 0; i <= count; i++)
        {
            var share = (double)i / count;
            var height = surface(from.A + share * (to.A - from.A), from.B + share * (to.B - from.B));
            Assert.True(height is not null, $"no ground {share:P0} along the line");
            profile.Add(new GroundVertex(share * length * unit, height.Value * unit));
        }
        return profile;
    }

    // 43 columns by 89 rows of 3 m cells from the lower-left corner (559705, 4380220), north first; 0 is no data.
    private static Surface Gully()
    {
        double[][] cells = [.. SharedData.Lines("terrain/west-bijou-gully-3m.asc").Select(Numbers).Where(r => r.Length == 43)];
        return (x, y) =>
        {
            var (column, row) = ((x - 559705) / 3 - 0.5, 88.5 - (y - 4380220) / 3);
            var (c, r) = ((int)Math.Floor(column), (int)Math.Floor(row));
            double[] four = [cells[r][c], cells[r][c + 1], cells[r + 1][c], cells[r + 1][c + 1]];
            if (four.Contains(0)) return null;
            var (u, v) = (column - c, row - r);
            return (1 - v) * ((1 - u) * four[0] + u * four[1]) + v * ((1 - u) * four[2] + u * four[3]);
        };
    }

    private static Surface Lot() => Triangles("terrain/lot-survey-tin-metres.xml", 0);

    private static Surface Subdivision() => Triangles("plans/subdivision-1.1-feet.xml", 0);

    /// <summary>North and east to height over a LandXML surface's visible triangles.</summary>
    private static Surface Triangles(string path, int index)
    {
        var file = XDocument.Parse(string.Join('\n', SharedData.Lines(path)));
        var surface = file.Descendants().Where(e => e.Name.LocalName == "Surface").ElementAt(index);
        var points = surface.Descendants().Where(e => e.Name.LocalName == "P").ToDictionary(e => e.Attribute("id")!.Value, e => Numbers(e.Value));
        double[][][] faces = [.. surface.Descendants().Where(e => e.Name.LocalName == "F" && e.Attribute("i")?.Value != "1")
            .Select(e => e.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(3).Select(id => points[id]).ToArray())];
        return (north, east) => faces.Select(f => In(f, north, east)).FirstOrDefault(h => h is not null);
    }

    private static double? In(double[][] f, double n, double e)
    {
        var whole = Cross(f[0], f[1], f[2][0], f[2][1]);
        if (whole == 0) return null;
        var (a, b) = (Cross(f[1], f[2], n, e) / whole, Cross(f[2], f[0], n, e) / whole);
        if (a < -1e-9 || b < -1e-9 || a + b > 1 + 1e-9) return null;
        return a * f[0][2] + b * f[1][2] + (1 - a - b) * f[2][2];
    }

    private static double Cross(double[] p, double[] q, double n, double e) => (q[0] - p[0]) * (e - p[1]) - (q[1] - p[1]) * (n - p[0]);

    private static double[] Numbers(string line)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return words.Length > 0 && words.All(w => double.TryParse(w, CultureInfo.InvariantCulture, out _))
            ? [.. words.Select(w => double.Parse(w, CultureInfo.InvariantCulture))] : [];
    }
}
