using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Papers.Drawings;

namespace Tautline.Documents.Tests;

/// <summary>Terminals, gates and footings: what is drawn is read off the scene again by its own scale.</summary>
public sealed class ElevationTests
{
    private const double Inch = 0.0254;

    private static readonly PlanWords words = new(UnitSystem.UsCustomary);
    private static readonly Phrases say = Phrases.Of("en");

    private static double Inches(double points, Scene scene) => points / scene.UnitsPerMetre / Inch;

    /// <summary>
    /// Level yard, post A1 (docs/checks): bands 1 down, then every 4 diamonds, last one 2½. The catalogue has 20½ diamonds over 6 ft of 2-in mesh (its source stands beside the row):
    /// four of them are 4 × 72 / 20.5 = 14.05 in.
    /// </summary>
    [Fact]
    public void BandsAreDrawnAtTheirDiamonds()
    {
        Scene scene = TerminalDrawing.Of(SamplePlans.Of("level-yard.json"), 0, 0, 400, 300, words)!;
        double[] at = [.. scene.Items.OfType<SceneItem.Path>().Where(p => p.Role == SceneRole.Step && p.Tag.Length > 0).Select(p => (p.Points[1] + p.Points[5]) / 2).Distinct().Order()];

        Assert.Equal(6, at.Length);
        Assert.Equal(14.05, Inches(at[1] - at[0], scene), 2);
        Assert.Equal(8.78, Inches(at[5] - at[4], scene), 2);
    }

    /// <summary>The walk gate of the level yard is 4 ft from face to face, its posts 2.875 in.</summary>
    [Fact]
    public void AGateMeasuresItsOpeningBetweenTheFacesOfItsPosts()
    {
        Scene scene = GateDrawing.Of(SamplePlans.Of("level-yard.json"), 0, 0, 525, 270, words, say);
        SceneItem.Path[] posts = [.. scene.Items.OfType<SceneItem.Path>().Where(p => p.Role == SceneRole.Pipe).OrderBy(p => p.Points[0])];

        Assert.Equal(2, posts.Length);
        Assert.Equal(48, Inches(posts[1].Points[0] - posts[0].Points[2], scene), 2);
        Assert.Equal(2.875, Inches(posts[0].Points[2] - posts[0].Points[0], scene), 4);
    }

    /// <summary>A terminal of the level yard stands in a hole of 12 by 30 in.</summary>
    [Fact]
    public void AFootingIsDrawnAsWideAndDeepAsItIsDug()
    {
        Plan plan = SamplePlans.Of("level-yard.json");
        Scene scene = FootingDrawing.Of(plan, plan.Lines[0].Posts[0], 170, 170, words, say);
        SceneItem.Path hole = scene.Items.OfType<SceneItem.Path>().Single(p => p.Role == SceneRole.Concrete);
        double left = hole.Points.Where((_, i) => i % 2 == 0).Min(), right = hole.Points.Where((_, i) => i % 2 == 0).Max();

        Assert.Equal(12, Inches(right - left, scene), 2);
        Assert.Equal(30, Inches(hole.Points[9] - hole.Points[1], scene), 2);
    }

    public static TheoryData<string> Samples() => [.. SamplePlans.Names];

    /// <summary>Every terminal and gate of every sample: nothing leaves its drawing, no two texts lie over each other.</summary>
    [Theory]
    [MemberData(nameof(Samples))]
    public void NothingLeavesTheDrawingAndTextsKeepClear(string sample)
    {
        Plan plan = SamplePlans.Of(sample);
        foreach ((int line, LinePlan planned) in plan.Lines.Index())
        {
            foreach ((int post, PostPlan _) in planned.Posts.Index())
                if (TerminalDrawing.Of(plan, line, post, 273, 262, words) is { } terminal) Holds(terminal, $"{sample} terminal {post + 1}");
            foreach ((int gate, GatePlan _) in planned.Gates.Index()) Holds(GateDrawing.Of(plan, line, gate, 525, 270, words, say), $"{sample} gate {gate + 1}");
        }
    }

    private static void Holds(Scene scene, string what)
    {
        foreach (SceneItem.Path path in scene.Items.OfType<SceneItem.Path>())
            for (int i = 0; i + 1 < path.Points.Count; i += 2)
            {
                Assert.True(path.Points[i] >= -0.5 && path.Points[i] <= scene.Width + 0.5, $"{what}: {path.Role} at x {path.Points[i]:0} of {scene.Width:0}");
                Assert.True(path.Points[i + 1] >= -0.5 && path.Points[i + 1] <= scene.Height + 0.5, $"{what}: {path.Role} at y {path.Points[i + 1]:0} of {scene.Height:0}");
            }

        var boxes = scene.Items.OfType<SceneItem.Text>().Where(t => t.Role != SceneRole.Callout).Select(t => (t.Words, Box: Box(t))).ToList();
        foreach ((int i, (string text, (double Left, double Top, double Right, double Bottom) a)) in boxes.Index())
        {
            Assert.True(a.Left >= 0 && a.Right <= scene.Width && a.Top >= 0 && a.Bottom <= scene.Height, $"{what}: '{text}' leaves the drawing");
            foreach ((string other, (double Left, double Top, double Right, double Bottom) b) in boxes.Skip(i + 1))
                Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"{what}: '{text}' lies over '{other}'");
        }
    }

    private static (double Left, double Top, double Right, double Bottom) Box(SceneItem.Text text)
    {
        double wide = (RoleStyle.Of(text.Role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(text.Words, text.Size);
        double left = text.Anchor switch { TextAnchor.End => text.X - wide, TextAnchor.Middle => text.X - (wide / 2), _ => text.X };
        return (left, text.Y - (0.75 * text.Size), left + wide, text.Y);
    }
}
