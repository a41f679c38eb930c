using System.Globalization;
using System.Text;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Papers.Drawings;

namespace Tautline.Documents.Tests;

/// <summary>The site plan as a scene, and as the files other programs open.</summary>
public sealed class SitePlanTests
{
    private const double Foot = 0.3048;

    private static Scene Site(Plan plan, double width = 525, double height = 570, UnitSystem units = UnitSystem.UsCustomary)
        => SitePlanDrawing.Of(plan, PictureStage.Of(plan, units), width, height, new PlanWords(units), Phrases.Of("en"))!;

    private static (double X, double Y) At(Scene scene, int post)
    {
        SceneItem item = scene.Items.First(i => i.Tag == $"post {post}" && i is not SceneItem.Text);
        return item switch
        {
            SceneItem.Circle circle => (circle.X, circle.Y),
            SceneItem.Path path => (Middle(path.Points, 0), Middle(path.Points, 1)),
            _ => throw new InvalidOperationException(),
        };
    }

    private static double Middle(IReadOnlyList<double> points, int from)
    {
        double[] all = [.. Enumerable.Range(0, points.Count / 2).Select(i => points[(2 * i) + from])];
        return (all.Min() + all.Max()) / 2;
    }

    /// <summary>Level yard: 10 ft from the post at 220 ft to that at 230 ft (docs/checks); on a ruler of 1 in = 20 ft that is half an inch, 36 points.</summary>
    [Fact]
    public void ATenFootBayMeasuresTenFeetAtTheStatedScale()
    {
        Scene scene = Site(SamplePlans.Of("level-yard.json"));
        (double ax, double ay) = At(scene, 24);
        (double bx, double by) = At(scene, 25);
        double points = Math.Sqrt(Math.Pow(bx - ax, 2) + Math.Pow(by - ay, 2));
        double feetToTheInch = double.Parse(scene.Scale.Split("= ")[1].Split(' ')[0], CultureInfo.InvariantCulture);

        Assert.Equal(10, points / 72 * feetToTheInch, 6);
    }

    [Theory]
    [InlineData("level-yard.json")]
    [InlineData("corner-lot.json")]
    [InlineData("creek-yard.json")]
    [InlineData("ball-field.json")]
    [InlineData("ridge-road.json")]
    public void EveryPostIsDrawnOnceWhereItStands(string sample)
    {
        Plan plan = SamplePlans.Of(sample);
        Scene scene = Site(plan);
        PostPlan[] posts = [.. plan.Lines.SelectMany(l => l.Posts)];

        Assert.Equal(posts.Length, scene.Items.Where(i => i is not SceneItem.Text && i.Tag.StartsWith("post ", StringComparison.Ordinal)).Select(i => i.Tag).Distinct().Count());
        Assert.Equal(posts.Length, scene.Items.Count(i => i is not SceneItem.Text && i.Tag.StartsWith("post ", StringComparison.Ordinal)));
        foreach ((int i, PostPlan post) in posts.Index())
        {
            (double x, double y) = At(scene, i);
            // A triangle's middle lies a fifth of a sign lower than its place: under a millimetre of paper.
            Assert.Equal(post.East.Metres, scene.Origin!.Value.X + (x / scene.UnitsPerMetre), 0.9 / scene.UnitsPerMetre);
            Assert.Equal(post.North.Metres, scene.Origin.Value.Y - (y / scene.UnitsPerMetre), 0.9 / scene.UnitsPerMetre);
        }
    }

    [Theory]
    [InlineData("level-yard.json")]
    [InlineData("creek-yard.json")]
    [InlineData("larkspur-ground.json")]
    [InlineData("corner-lot.json")]
    public void NoTwoTextsLieOverEachOtherAndNoneLeavesTheSheet(string sample)
    {
        Scene scene = Site(SamplePlans.Of(sample));
        var boxes = scene.Items.OfType<SceneItem.Text>().Where(t => t.Angle == 0).Select(t => (Text: t.Words, Box: Box(t))).ToList();

        foreach ((int i, (string text, (double Left, double Top, double Right, double Bottom) a)) in boxes.Index())
        {
            Assert.InRange(a.Left, 0, scene.Width);
            Assert.InRange(a.Right, 0, scene.Width);
            Assert.InRange(a.Bottom, 0, scene.Height);
            foreach ((string other, (double Left, double Top, double Right, double Bottom) b) in boxes.Skip(i + 1))
                Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"'{text}' lies over '{other}'");
        }
    }

    private static (double Left, double Top, double Right, double Bottom) Box(SceneItem.Text text)
    {
        double wide = (RoleStyle.Of(text.Role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(text.Words, text.Size);
        double left = text.Anchor switch { TextAnchor.End => text.X - wide, TextAnchor.Middle => text.X - (wide / 2), _ => text.X };
        return (left, text.Y - (0.75 * text.Size), left + wide, text.Y);
    }

    /// <summary>90 ft have 6.3 in of the sheet: 10 ft to the inch is too large, 20 fits; 27.4 m have 161 mm: 1:100 is too large, 1:200 fits. Scales there is a ruler for: engineer's scales in feet to the inch; ISO 5455's 1, 2, 5 (and 2.5) by tens.</summary>
    [Theory]
    [InlineData("level-yard.json", UnitSystem.UsCustomary, "1 in = 20 ft")]
    [InlineData("level-yard.json", UnitSystem.Metric, "1:200")]
    public void TheScaleIsOneOfARuler(string sample, UnitSystem units, string scale) => Assert.Equal(scale, Site(SamplePlans.Of(sample), units: units).Scale);

    /// <summary>The yard is 90 ft by 60 ft; GDAL reads its corners in feet, in the layer of the fence line.</summary>
    [Fact]
    public void GdalReadsTheDxfWithLayersAndUnits()
    {
        byte[] dxf = DxfWriter.Write(Site(SamplePlans.Of("level-yard.json")), UnitSystem.UsCustomary);
        string said = Outside.Made("ogrinfo", ["-al", "-where", "Layer='FENCE-LINE'", "site.dxf"], "site.dxf", dxf);
        string all = Outside.Made("ogrinfo", ["-al", "site.dxf"], "site.dxf", dxf);

        Assert.Contains("LINESTRING (0 0,0 60)", said, StringComparison.Ordinal);
        Assert.Contains("LINESTRING (0 60,90 60)", said, StringComparison.Ordinal);
        foreach (string layer in (string[])["FENCE-LINE", "FENCE-POST", "FENCE-RAIL", "FENCE-GATE-OPEN", "TEXT", "DIMENSION"]) Assert.Contains($"Layer (String) = {layer}", all, StringComparison.Ordinal);
        Assert.Contains("Text (String) = A18", all, StringComparison.Ordinal);
        // $INSUNITS: 2 feet, 6 metres (DXF Reference, HEADER section).
        Assert.Contains("$INSUNITS\r\n 70\r\n2\r\n", Encoding.UTF8.GetString(dxf), StringComparison.Ordinal);
        Assert.Contains("$INSUNITS\r\n 70\r\n6\r\n", Encoding.UTF8.GetString(DxfWriter.Write(Site(SamplePlans.Of("level-yard.json")), UnitSystem.Metric)), StringComparison.Ordinal);
    }

    [Fact]
    public void ADrawingThatIsNotToScaleIsNoDxf() => Assert.Throws<ArgumentException>(() => DxfWriter.Write(new Scene(10, 10, []), UnitSystem.Metric));
}
