using System.Globalization;
using System.Xml.Linq;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Real surfaces kept beside the repository, by readers just good enough for these files. Where a file is absent the test is skipped.</summary>
internal static class SharedGround
{
    /// <summary>An Esri ASCII grid with the six usual header lines.</summary>
    public static (GridFrame Frame, double[] Heights, double NoData) AsciiGrid(string path)
    {
        var lines = File.ReadAllLines(Find(path));
        var header = lines.Take(6).Select(l => Number(l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1])).ToArray();
        var heights = lines.Skip(6).SelectMany(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Select(Number).ToArray();
        var (columns, rows, west, south, cell) = ((int)header[0], (int)header[1], header[2], header[3], header[4]);
        return (new(rows, columns, west, south + rows * cell, cell, cell, GridHeights.AtCentres), heights, header[5]);
    }

    /// <summary>A surface of a LandXML file: points as north, east, height; invisible faces left out.</summary>
    public static (GroundPoint[] Points, int[] Faces) LandXml(string path, string surface, double metresPerUnit = 1)
    {
        var definition = XDocument.Load(Find(path)).Descendants()
            .Single(e => e.Name.LocalName == "Surface" && (string?)e.Attribute("name") == surface)
            .Elements().Single(e => e.Name.LocalName == "Definition");
        var rows = definition.Descendants().Where(e => e.Name.LocalName == "P").ToArray();
        var numbers = rows.Select((row, i) => ((string)row.Attribute("id")!, i)).ToDictionary(r => r.Item1, r => r.i);
        var points = rows.Select(r => Words(r).Select(Number).ToArray())
            .Select(r => new GroundPoint(r[1] * metresPerUnit, r[0] * metresPerUnit, r[2] * metresPerUnit)).ToArray();
        var faces = definition.Descendants().Where(e => e.Name.LocalName == "F" && (string?)e.Attribute("i") != "1");
        return (points, [.. faces.SelectMany(f => Words(f).Select(w => numbers[w]))]);
    }

    /// <summary>Survey points as number, north, east, height, description.</summary>
    public static GroundPoint[] Survey(string path) =>
        [.. File.ReadAllLines(Find(path)).Select(l => l.Split(',')).Select(f => new GroundPoint(Number(f[2]), Number(f[1]), Number(f[3])))];

    private static string[] Words(XElement element) => element.Value.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Find(string path)
    {
        var file = Path.Combine(Root(), "data", path);
        if (!File.Exists(file)) Assert.Skip($"The shared file {path} is not here.");
        return file;
    }

    private static string Root()
    {
        if (Environment.GetEnvironmentVariable("TAUTLINE_SHARED") is { Length: > 0 } stated) return stated;
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Tautline.slnx"))) folder = folder.Parent;
        return Path.Combine(folder?.Parent?.FullName ?? "", "shared");
    }
}
