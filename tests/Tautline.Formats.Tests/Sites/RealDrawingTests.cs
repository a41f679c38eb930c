using Tautline.Formats.Sites;

namespace Tautline.Formats.Tests.Sites;

/// <summary>Drawings of the shared folder plans/ and malformed/. Lengths, areas and extents are facts of their READMEs, computed with GDAL 3.6 and plain Python.</summary>
public sealed class RealDrawingTests
{
    [Fact]
    public void AClosedLoopOfLinesAndArcsHasItsPerimeter()
    {
        var file = SiteData.Shared("plans/closed-loop-lines-arcs-r2013-m.dxf");

        Assert.Equal("DXF AC1027 (2013)", file.FormatName);
        Assert.Equal(SiteUnit.Metre, file.Claims.Unit);
        Assert.Equal((9, 2), (file.Read("LINE"), file.Read("ARC")));
        Assert.Equal(526.965497, file.Lines().Where(f => f.Kind == "LINE").Sum(f => f.Length()), 1e-6);
        var arcs = file.Lines().Where(f => f.Kind == "ARC").Select(f => f.Length()).Order().ToList();
        Assert.Equal(59.43264041, arcs[0], 1e-8);
        Assert.Equal(66.66034139, arcs[1], 1e-8);
        Assert.Equal(653.058479, file.Lines().Sum(f => f.Length()), 1e-6);
        Assert.Equal(11, file.Features.Length);
        // The README's extent is of arcs drawn as chords; our corners lie within it.
        Assert.Equal(159.215147, file.Extent!.Value.West, 1e-6);
        Assert.Equal(252.117172, file.Extent.Value.North, 1e-6);
        Assert.False(file.HasErrors);
    }

    [Fact]
    public void AContourPlanHasItsLengthsByLayerAndItsAccentedName()
    {
        var file = SiteData.Shared("plans/contour-plan-r2004-m.dxf");

        Assert.Equal("DXF AC1018 (2004)", file.FormatName);
        var drawn = file.Lines().Where(f => f.Kind == "LWPOLYLINE" && f.Block.Length == 0).ToList();
        Assert.Equal(50, drawn.Count);
        Assert.Equal(6, file.Read("INSERT"));
        (string Layer, int Count, double Length)[] facts =
        [
            ("courbes niveau", 3, 747.839123), ("Cut Lazer out line", 4, 599.475009), ("coupe lazer Marquers niveaux", 2, 496.811113), ("cadre 2", 3, 974.180819), ("tracé", 38, 618.722593),
        ];
        foreach (var (layer, count, length) in facts)
        {
            var on = drawn.Where(f => f.Layer == layer).ToList();
            Assert.Equal((layer, count), (layer, on.Count));
            Assert.Equal(length, on.Sum(f => f.Length()), 1e-6);
        }
        var frame = Assert.Single(drawn, f => f.Layer == "cadre 2" && f.Closed);
        Assert.Equal(872.2, frame.Length(), 0.05);
        Assert.Equal(46819.5, Math.Abs(frame.Area()), 0.05);
        Assert.All(drawn, f => Assert.All(f.Vertices, v => Assert.True(double.IsNaN(v.Z) || v.Z == 0)));
    }

    [Fact]
    public void BulgesMakeTheOutlinesTheyStandFor()
    {
        var file = SiteData.Shared("plans/lwpolyline-bulges-r2007-mm.dxf");

        Assert.Equal(SiteUnit.Millimetre, file.Claims.Unit);
        var outlines = file.Lines().OrderBy(f => Math.Abs(f.Area())).ToList();
        Assert.Equal(3, outlines.Count);
        Assert.All(outlines, o => Assert.True(o.Closed));
        Assert.Equal((108.166827, 435.215609), (Math.Round(outlines[0].Length(), 6), Math.Round(Math.Abs(outlines[0].Area()), 6)));
        Assert.Equal((202.552052, 1141.564363), (Math.Round(outlines[1].Length(), 6), Math.Round(Math.Abs(outlines[1].Area()), 6)));
        Assert.Equal((1310.348511, 107147.570816), (Math.Round(outlines[2].Length(), 6), Math.Round(Math.Abs(outlines[2].Area()), 6)));
        Assert.True(outlines[2].Area() < 0, "drawn clockwise");
        Assert.All(outlines.Take(2), o => Assert.All(o.Vertices, v => Assert.NotEqual(0, v.Bulge)));
    }

    [Fact]
    public void APolylineInSpaceKeepsItsHeightsAndAsksForItsUnit()
    {
        var file = SiteData.Shared("plans/polyline-3d-r12-nounits.dxf");

        Assert.Null(file.Claims.Unit);
        var line = Assert.Single(file.Lines());
        Assert.Equal(5, file.Positions);
        Assert.True(line.Closed);
        Assert.Equal(4, line.Vertices.Length); // the fifth is the first again
        Assert.Equal(3.906486, Length3D(line), 1e-6);
        var box = file.Extent!.Value;
        Assert.Equal((0.102193, -1.579476, 1.250793, -0.361930), (Math.Round(box.West, 6), Math.Round(box.South, 6), Math.Round(box.East, 6), Math.Round(box.North, 6)));
        Assert.Equal((0.476763, 0.494414), (Math.Round(box.Lowest, 6), Math.Round(box.Highest, 6)));
    }

    [Fact]
    public void AnExportWithFaultsIsRead()
    {
        var file = SiteData.Shared("malformed/disto-s910-export-r12.dxf");

        Assert.Equal((11, 11, 10), (file.Read("POINT"), file.Read("TEXT"), file.Read("LINE")));
        Assert.Equal(4.582211, file.Lines().Sum(Length3D), 1e-6);
        var box = file.Lines().SelectMany(f => f.Vertices).Concat(file.Points().Where(f => f.Kind == "POINT").SelectMany(f => f.Vertices)).ToList();
        Assert.Equal((-0.116359, -0.827625), (Math.Round(box.Min(v => v.X), 6), Math.Round(box.Min(v => v.Y), 6)));
        Assert.Equal((1.080163, 0.066894), (Math.Round(box.Max(v => v.X), 6), Math.Round(box.Max(v => v.Y), 6)));
        Assert.Null(file.Claims.Unit);
        Assert.False(file.HasErrors);
    }

    private static double Length3D(SiteFeature line)
    {
        var sum = 0.0;
        for (var i = 0; i < (line.Closed ? line.Vertices.Length : line.Vertices.Length - 1); i++)
        {
            var (a, b) = (line.Vertices[i], line.Vertices[(i + 1) % line.Vertices.Length]);
            sum += Math.Sqrt((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y) + (b.Z - a.Z) * (b.Z - a.Z));
        }
        return sum;
    }
}
