using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;

namespace Tautline.Papers.Drawings;

/// <summary>How one kind of post is held, cut through its middle, to one scale both ways.</summary>
public static class FootingDrawing
{
    public static Scene Of(Plan plan, PostPlan post, double width, double height, PlanWords words, Phrases say)
    {
        var sketch = new Sketch(width, height);
        double od = plan.Basis.Catalog.FindSection(post.Section)!.OutsideDiameter.Metres;
        double deep = post.HoleDepth.Metres, stub = Math.Max(0.3, deep * 0.4);
        double scale = Math.Min((height - 56) / (deep + stub + 0.1), (width - 130) / Math.Max(0.3, post.HoleDiameter.Metres));
        double ground = 12 + (stub * scale), middle = (width / 2) - 14, half = od / 2 * scale, hole = Math.Max(half, post.HoleDiameter.Metres / 2 * scale);
        sketch.Shape(SceneRole.Earth, "", 20, ground, width - 60, ground, width - 60, ground + (deep * scale) + 12, 20, ground + (deep * scale) + 12);
        if (post.Support is Support.Concrete or Support.Cored)
        {
            double crown = post.Support == Support.Concrete ? 3.5 : 0;
            sketch.Shape(SceneRole.PostTop, "", middle - hole, ground, middle - half, ground - crown, middle + half, ground - crown, middle + hole, ground, middle + hole, ground + (deep * scale), middle - hole, ground + (deep * scale));
            sketch.Shape(SceneRole.Concrete, "", middle - hole, ground, middle - half, ground - crown, middle + half, ground - crown, middle + hole, ground, middle + hole, ground + (deep * scale), middle - hole, ground + (deep * scale));
        }

        if (post.Support == Support.Plated) sketch.Box(SceneRole.Step, middle - (half * 2.2), ground - 3, middle + (half * 2.2), ground);
        double pipe = post.Support is Support.Plated ? 3 : -(post.CutLength.Metres - post.AboveGround.Metres) * scale;
        sketch.Box(SceneRole.Pipe, middle - half, ground - (stub * scale), middle + half, ground - pipe);
        sketch.Line(SceneRole.Ground, "", 20, ground, middle - hole, ground);
        sketch.Line(SceneRole.Ground, "", middle + hole, ground, width - 60, ground);
        if (deep > 0) sketch.Upright(ground, ground + (deep * scale), width - 54, middle + hole + 2, words.Short(post.HoleDepth));
        if (post.HoleDiameter.Metres > 0) sketch.Across(middle - hole, middle + hole, ground + (deep * scale) + 20, ground + (deep * scale) + 2, words.Short(post.HoleDiameter));
        sketch.Say(SceneRole.Strong, middle, height - 4, post.Section, TextAnchor.Middle, 7.5);
        sketch.Say(SceneRole.Note, 20, ground - 4, say["paper.footing.grade"], TextAnchor.Start, 6.5);
        return sketch.Done(scale);
    }
}
