using System.Xml.Linq;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;

namespace Tautline.Documents.Tests;

/// <summary>The profile and the cut card as scenes. What they show is the plan's: it is read off the scene again by the stated scale.</summary>
public sealed class ProfileDrawingTests
{
    private const double Foot = 0.3048;

    private static Scene Profile(Plan plan, double from, double to, double width = 1000, double times = 0, bool screen = false)
        => ProfileDrawing.Of(ProfileStage.Of(plan, 0), new(from, to, width, 360, times) { ForScreen = screen }, new PlanWords(plan.Basis.Job.Units), Phrases.Of("en"));

    private static IEnumerable<(string Tag, double X, double Bottom, double Top)> Posts(Scene scene) => scene.Items.OfType<SceneItem.Path>()
        .Where(p => p.Role is SceneRole.Post or SceneRole.Terminal).Select(p => (p.Tag, p.Points[0], p.Points[1], p.Points[3]));

    /// <summary>Ridge road: 480 ft from its end to its first pull post, at most 10 ft apart: 48 bays of 10 ft, counted by hand.</summary>
    [Fact]
    public void ATenFootBayMeasuresTenFeetAtTheStatedScale()
    {
        Scene scene = Profile(SamplePlans.Of("ridge-road.json"), 0, 60 * Foot);
        double[] x = [.. Posts(scene).Where(p => p.Tag is "post 0" or "post 1").OrderBy(p => p.X).Select(p => p.X)];

        Assert.Equal(10, (x[1] - x[0]) / scene.UnitsPerMetre / Foot, 2);
    }

    [Fact]
    public void EveryPostOfThePlanIsDrawnOnceWhereItStands()
    {
        Plan plan = SamplePlans.Of("larkspur-ground.json");
        Scene scene = Profile(plan, 0, plan.Lines[0].Level.Metres, 2400);
        var drawn = Posts(scene).ToDictionary(p => p.Tag);
        double start = drawn["post 0"].X;

        Assert.Equal(plan.Lines[0].Posts.Count, drawn.Count);
        foreach ((int i, PostPlan post) in plan.Lines[0].Posts.Index())
        {
            (_, double x, double bottom, double top) = drawn[$"post {i}"];
            Assert.Equal(post.Station.Metres, (x - start) / scene.UnitsPerMetre, 3);
            Assert.Equal((post.TopHeight!.Value - post.GroundHeight!.Value).Metres, (bottom - top) / scene.UnitsPerMetre / scene.Exaggeration, 3);
        }
    }

    [Theory]
    [InlineData("larkspur-ground.json", 420)]
    [InlineData("larkspur-ground.json", 1400)]
    [InlineData("ridge-road.json", 900)]
    [InlineData("goat-hill.json", 300)]
    [InlineData("corner-lot.json", 700)]
    [InlineData("ball-field.json", 200)]
    public void TextsDoNotLieOverEachOtherAndNothingLeavesTheDrawing(string sample, double width)
    {
        Plan plan = SamplePlans.Of(sample);
        Scene scene = Profile(plan, 0, plan.Lines[0].Level.Metres, width);
        var boxes = scene.Items.OfType<SceneItem.Text>().Where(t => t.Role is not (SceneRole.Warning or SceneRole.Error)).Select(Box).ToList();

        for (int i = 0; i < boxes.Count; i++)
            for (int j = i + 1; j < boxes.Count; j++)
                Assert.False(boxes[i].Left < boxes[j].Right && boxes[j].Left < boxes[i].Right && boxes[i].Top < boxes[j].Bottom && boxes[j].Top < boxes[i].Bottom, $"{boxes[i]} over {boxes[j]}");
        Assert.All(boxes, b => Assert.True(b.Left >= 0 && b.Right <= width && b.Top >= 0 && b.Bottom <= 360));
        Assert.All(scene.Items.OfType<SceneItem.Path>(), p => Assert.All(p.Points.Chunk(2), at => Assert.True(at[0] >= -8 && at[0] <= width + 8 && at[1] >= -8 && at[1] <= 368, $"{p.Role} {at[0]} {at[1]}")));
    }

    [Fact]
    public void ALongLineIsThinnedToWhatCanBeSeen()
    {
        Plan plan = SamplePlans.Of("ridge-road.json");
        Scene scene = Profile(plan, 0, plan.Lines[0].Level.Metres, 300, screen: true);

        Assert.Equal(291, plan.Lines[0].Posts.Count);
        Assert.InRange(Posts(scene).Count(), 20, 130);
        Assert.Equal(291, Posts(Profile(plan, 0, plan.Lines[0].Level.Metres, 4000)).Count());
    }

    [Theory]
    [InlineData("larkspur-ground.json")]
    [InlineData("creek-yard.json")]
    public void TheSvgIsWellFormedAndTheSameTwice(string sample)
    {
        Plan plan = SamplePlans.Of(sample);
        string once = SvgWriter.File(Profile(plan, 0, plan.Lines[0].Level.Metres), "Ground & <fence>");

        Assert.Equal(once, SvgWriter.File(Profile(plan, 0, plan.Lines[0].Level.Metres), "Ground & <fence>"));
        XElement root = XDocument.Parse(once).Root!;
        Assert.Equal("svg", root.Name.LocalName);
        Assert.Equal("Ground & <fence>", root.Elements().First(e => e.Name.LocalName == "title").Value);
    }

    /// <summary>The steps are the plan's, and the diamonds have the proportion of the plan's mesh.</summary>
    [Fact]
    public void TheCutCardHasItsStepsWhereTheyAreCounted()
    {
        Plan plan = SamplePlans.Of("goat-hill.json");
        Scene scene = CutCardDrawing.Of(plan, 0, 0, 0, 400, 600, Phrases.Of("en"))!;
        SpecPlan spec = plan.Specs[0];
        var kept = scene.Items.OfType<SceneItem.Path>().First(p => p.Role == SceneRole.Wire);
        (double wide, double tall) = (Math.Abs(kept.Points[2] - kept.Points[0]), Math.Abs(kept.Points[3] - kept.Points[1]));

        Assert.Equal(spec.HalfDiamond.Metres / ((spec.AdvanceLow + spec.AdvanceHigh) / 2).Metres, tall / wide, 6);
        Assert.Equal(HangCards.Cut(plan, 0, 0, 0).Crossings.Count, scene.Items.Count(i => i.Role == SceneRole.Step));
        Assert.Contains(scene.Items.OfType<SceneItem.Text>(), t => t.Words.StartsWith("13 pickets to cross in 24 rows", StringComparison.Ordinal));
    }

    [Fact]
    public void AnEndThatIsCutSquareHasNoCard() => Assert.Null(CutCardDrawing.Of(SamplePlans.Of("level-yard.json"), 0, 0, 0, 400, 600, Phrases.Of("en")));

    private static (double Left, double Top, double Right, double Bottom, string Words) Box(SceneItem.Text text)
    {
        double wide = (RoleStyle.Of(text.Role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(text.Words, text.Size);
        double left = text.Anchor switch { TextAnchor.Start => text.X, TextAnchor.End => text.X - wide, _ => text.X - (wide / 2) };
        return (left, text.Y - (text.Size * 0.72), left + wide, text.Y, text.Words);
    }
}
