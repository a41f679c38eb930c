using System.Globalization;
using Tautline.Documents.Scenes;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Papers.Drawings;

/// <summary>
/// A terminal seen from the side, to one scale both ways: the post with what slides on it at its diamonds, each numbered as the stack card numbers it, the
/// fabric that ends there, its hole, and the heights a crew measures.
/// </summary>
public static class TerminalDrawing
{
    /// <returns>Nothing for a post that carries no end of fabric.</returns>
    public static Scene? Of(Plan plan, int line, int post, double width, double height, PlanWords words)
    {
        if (HangCards.Stack(plan, line, post) is not { } card) return null;
        LinePlan planned = plan.Lines[line];
        List<End> ends = [.. Ends(plan, line, post)];
        PostPlan one = planned.Posts[post];
        var sketch = new Sketch(width, height);
        double above = Math.Max(one.AboveGround.Metres, ends.Max(e => e.Top)), below = Math.Max(0.25, one.HoleDepth.Metres + 0.08);
        double scale = (height - 34) / (above + below);
        double ground = 20 + (above * scale);
        double Y(double up) => ground - (up * scale);
        double middle = width * 0.4;
        double half = Math.Max(3, plan.Basis.Catalog.FindSection(one.Section)!.OutsideDiameter.Metres / 2 * scale);

        Earth(sketch, one, ground, middle, scale, half);
        foreach ((int i, End end) in ends.Index()) Fabric(sketch, Side(i), middle, half, Y(end.Top), Y(end.Bottom), width);
        sketch.Box(SceneRole.Pipe, middle - half, Y(one.AboveGround.Metres), middle + half, Y(0) + (one.HoleDepth.Metres * scale), "post");
        sketch.Box(SceneRole.Step, middle - half - 1, Y(one.AboveGround.Metres) - 4, middle + half + 1, Y(one.AboveGround.Metres));
        foreach ((int number, StackItem item) in card.Items.Index())
        {
            int at = Math.Max(0, ends.FindIndex(e => OfEnd(item, e.Name)));
            Item(sketch, item, number + 1, Side(at), middle, half, diamond => Y(ends[at].Top - (diamond * ends[at].Pitch)), Y(one.AboveGround.Metres));
        }

        sketch.Upright(Y(one.AboveGround.Metres), ground, width - 62, middle + half + 60, words.Short(one.AboveGround));
        if (one.HoleDepth.Metres > 0) sketch.Upright(ground, ground + (one.HoleDepth.Metres * scale), width - 62, middle + half + 30, words.Short(one.HoleDepth));
        End tallest = ends.MaxBy(e => e.Top - e.Bottom)!;
        sketch.Upright(Y(tallest.Top), Y(tallest.Bottom), 48, middle - half - (ends.Count > 1 ? 62 : 44), words.Short(tallest.Plumb));
        return sketch.Done(scale);
    }

    /// <summary>An end of fabric at the post: heights over the ground, metres.</summary>
    /// <param name="Name">As the stack card names it.</param>
    /// <param name="Plumb">How tall the fabric stands, as it is printed.</param>
    private sealed record End(string Name, double Top, double Bottom, double Pitch, Length Plumb);

    private static IEnumerable<End> Ends(Plan plan, int line, int post)
    {
        LinePlan planned = plan.Lines[line];
        foreach ((int i, RunPlan run) in planned.Runs.Index())
        {
            Seat seat = HangCards.Seat(plan, line, i);
            double top = (seat.FabricTop.Low.Metres + seat.FabricTop.High.Metres) / 2, bottom = Math.Max(0, (seat.Gap.Low.Metres + seat.Gap.High.Metres) / 2);
            var spec = plan.Basis.Lines[line].Runs[i].Run.Spec;
            double pitch = (top - bottom) / spec.Diamonds.Diamonds / spec.Widths;
            if (run.FromPost == post) yield return new($"toward {PlanWords.Mark(line, planned.Posts[run.ToPost])}", top, bottom, pitch, seat.Plumb);
            if (run.ToPost == post) yield return new($"toward {PlanWords.Mark(line, planned.Posts[run.FromPost])}", top, bottom, pitch, seat.Plumb);
        }
    }

    /// <summary>Bands that stack on one another name both ends: 'toward A1 and toward A9'; other parts name theirs last: 'top rail, toward A9'.</summary>
    private static bool OfEnd(StackItem item, string end) => item.Name.Split(" and ").Any(n => n == end || n.EndsWith(", " + end, StringComparison.Ordinal));

    /// <summary>The first end to the right of the post, the second to its left.</summary>
    private static int Side(int end) => end == 0 ? 1 : -1;

    private static void Earth(Sketch sketch, PostPlan post, double ground, double middle, double scale, double half)
    {
        double hole = Math.Max(half + 2, post.HoleDiameter.Metres / 2 * scale), deep = post.HoleDepth.Metres * scale;
        if (post.HoleDiameter.Metres > 0) sketch.Box(SceneRole.Concrete, middle - hole, ground, middle + hole, ground + deep);
        sketch.Line(SceneRole.Ground, "", 52, ground, sketch.Width - 66, ground);
    }

    private static void Fabric(Sketch sketch, int side, double middle, double half, double top, double bottom, double width)
    {
        double from = middle + (side * (half + 5)), to = middle + (side * (half + Math.Min(60, width * 0.2)));
        (double left, double right) = (Math.Min(from, to), Math.Max(from, to));
        sketch.Box(SceneRole.Fabric, left, top, right, bottom);
        sketch.Line(SceneRole.FabricEdge, "", left, top, right, top);
        sketch.Line(SceneRole.FabricEdge, "", left, bottom, right, bottom);
        sketch.Line(SceneRole.Bar, "", from, top + 2, from, bottom - 2);
    }

    private static void Item(Sketch sketch, StackItem item, int number, int side, double middle, double half, Func<double, double> y, double capAt)
    {
        string text = number.ToString(CultureInfo.InvariantCulture);
        if (item.Diamonds.Count == 0)
        {
            sketch.Callout(middle - (side * (half + 22)), capAt - 6, middle, capAt - 2, text);
            return;
        }

        foreach (double diamond in item.Diamonds)
        {
            double at = y(diamond);
            double thick = item.Kind == StackKind.TensionBand ? 1.3 : 2.2;
            sketch.Box(item.Kind == StackKind.TensionBand ? SceneRole.Step : SceneRole.PostTop, middle - half - 1.5, at - thick, middle + half + 1.5, at + thick, text);
            if (item.Kind == StackKind.TensionBand) sketch.Line(SceneRole.Rail, "", middle + (side * half), at, middle + (side * (half + 5)), at);
            if (item.Kind == StackKind.TensionBand && item.Name.Contains(" and ", StringComparison.Ordinal)) sketch.Line(SceneRole.Rail, "", middle - (side * half), at, middle - (side * (half + 5)), at);
        }

        double first = y(item.Diamonds[^1]);
        double beside = item.Kind == StackKind.TensionBand ? half + 14 : half + 30;
        sketch.Callout(middle + (side * beside), first - (item.Kind == StackKind.TensionBand ? 7 : -7), middle + (side * (half + 1.5)), first, text);
    }
}
