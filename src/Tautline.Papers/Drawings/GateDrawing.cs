using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Site;

namespace Tautline.Papers.Drawings;

/// <summary>A gate seen from the side, to one scale both ways: its posts and their holes, its leaves, the ground under their way, and what is measured.</summary>
public static class GateDrawing
{
    /// <summary>What is called out on the drawing, by its part in the catalogue; the first is number 1.</summary>
    public static IReadOnlyList<string> Fittings(GatePlan gate) => gate.Kind switch
    {
        GateKind.Walk => ["hinge-set", "fork-latch"],
        GateKind.Double => ["hinge-set", "double-latch", "drop-rod"],
        GateKind.Cantilever => ["roller", "slide-latch"],
        GateKind.Rolling => ["gate-wheel", "guide-roller", "slide-latch"],
        _ => ["trolley"],
    };

    public static Scene Of(Plan plan, int line, int gate, double width, double height, PlanWords words, Phrases say)
    {
        LinePlan planned = plan.Lines[line];
        GatePlan one = planned.Gates[gate];
        ProfilePicture picture = ProfileStage.Of(plan, line, words.Units);
        ProfileGate seen = picture.Gates.First(g => g.Index == gate);
        (PostPlan near, PostPlan far) = (planned.Posts[one.FromPost], planned.Posts[one.ToPost]);
        double length = planned.Level.Metres;
        // A closed line's last gate may reach its first post again.
        double nearAt = near.Station.Metres, farAt = far.Station.Metres < nearAt ? far.Station.Metres + length : far.Station.Metres;
        (double from, double to) = Way(one, planned, nearAt, farAt);
        (double left, double right) = (from - 0.9, to + 0.9);
        double Ground(double station) => ProfileStage.HeightAt(picture.Ground.Span, planned.Closed ? (station + length) % length : Math.Clamp(station, 0, length));
        double[] along = [.. Enumerable.Range(0, 41).Select(i => left + ((right - left) * i / 40))];
        ProfilePost[] posts = [.. picture.Posts.Where(p => p.Index == one.FromPost || p.Index == one.ToPost || p.Index == one.Roller)];
        double low = Math.Min(posts.Min(p => p.Bottom), along.Min(Ground)) - 0.1, high = posts.Max(p => p.Top);
        double scale = Math.Min((width - 96) / (right - left), (height - 62) / (high - low));
        double start = (width - ((right - left) * scale)) / 2;
        double X(double station) => start + ((station - left) * scale);
        double Y(double up) => 34 + ((high - up) * scale);

        var sketch = new Sketch(width, height);
        foreach (ProfilePost post in posts) Post(sketch, plan, planned, post, X(Unrolled(post.Station, nearAt, length)), Y, scale);
        sketch.Line(SceneRole.Ground, "", [.. along.SelectMany(s => new[] { X(s), Y(Ground(s)) })]);
        Leaves(sketch, one, seen, X, Y, nearAt, farAt);
        CallOut(sketch, one, X(one.NearFace.Metres), X(one.NearFace.Metres + one.Opening.Metres), Y(seen.Top), Y(seen.Base));
        double top = Math.Min(Y(high) - 6, 30);
        sketch.Across(X(one.NearFace.Metres), X(one.NearFace.Metres + one.Opening.Metres), top, Y(high) - 2, words.Long(one.Opening));
        // Under the marks of the posts, which stand under their holes.
        double under = Y(posts.Min(p => p.Bottom)) + 13;
        sketch.Across(X(nearAt), X(farAt), Math.Min(height - 4, under + 11), under, words.Long(one.Centres));
        sketch.Upright(Y(seen.Top), Y(seen.Base), X(to) + 26, X(to) + 6, words.Short(seen.Tall));
        sketch.Say(SceneRole.Note, (X(nearAt) + X(farAt)) / 2, Y(seen.Base) - 6, say["paper.gate.highest"], TextAnchor.Middle, 6.5);
        return sketch.Done(scale);
    }

    /// <summary>Where the leaves reach closed, with their tails.</summary>
    private static (double From, double To) Way(GatePlan gate, LinePlan line, double near, double far)
    {
        double tail = Math.Max(0, (gate.Tail?.Metres ?? 0) + 0);
        if (tail == 0) return (near, far);
        bool back = gate.Roller is { } roller && Math.Abs(line.Posts[roller].Station.Metres - near) < Math.Abs(line.Posts[roller].Station.Metres - far);
        return back ? (near - tail, far) : (near, far + tail);
    }

    private static double Unrolled(double station, double from, double length) => station < from - (length / 2) ? station + length : station;

    private static void Post(Sketch sketch, Plan plan, LinePlan line, ProfilePost post, double x, Func<double, double> y, double scale)
    {
        double half = Math.Max(2, plan.Basis.Catalog.FindSection(line.Posts[post.Index].Section)!.OutsideDiameter.Metres / 2 * scale);
        double hole = Math.Max(half + 2, post.Hole / 2 * scale);
        if (post.Bottom < post.Ground) sketch.Box(SceneRole.Concrete, x - hole, y(post.Ground), x + hole, y(post.Bottom));
        sketch.Box(SceneRole.Pipe, x - half, y(post.Top), x + half, y(post.Bottom), $"post {post.Index}");
        sketch.Labels.Keep(x - half, y(post.Top), x + half, y(post.Bottom));
        sketch.Say(SceneRole.Strong, x, y(post.Bottom) + 10, PlanWords.Mark(plan.Lines.ToList().IndexOf(line), line.Posts[post.Index]));
    }

    private static void Leaves(Sketch sketch, GatePlan gate, ProfileGate seen, Func<double, double> x, Func<double, double> y, double near, double far)
    {
        (double top, double bottom) = (y(seen.Top - 0.03), y(seen.Base + 0.05));
        double opening = gate.Opening.Metres, from = gate.NearFace.Metres;
        double spare = Math.Max(0, opening - (gate.Kind == GateKind.Double ? 2 * gate.Leaf.Metres : Math.Min(gate.Leaf.Metres, opening)));
        int leaves = gate.Kind == GateKind.Double ? 2 : 1;
        double share = (opening - spare) / leaves, gap = spare / (leaves + 1);
        for (int i = 0; i < leaves; i++)
        {
            double left = x(from + gap + (i * (share + gap))), right = x(from + gap + (i * (share + gap)) + share);
            Leaf(sketch, left, right, top, bottom);
            if (gate.Kind is GateKind.Walk or GateKind.Double) Hinges(sketch, i == 0 ? left : right, top, bottom);
        }

        if (gate.Kind == GateKind.Double) sketch.Line(SceneRole.Bar, "", x(from + (opening / 2)), bottom - ((bottom - top) * 0.4), x(from + (opening / 2)), bottom + 6);
        if (gate.Tail is not { } tail) return;
        (double back, double _) = Tail(gate, near, far, tail.Metres);
        (double a, double b) = (x(Math.Min(back, back + tail.Metres)), x(back + tail.Metres));
        sketch.Shape(SceneRole.Gate, "", a, top, b, top, b, bottom, a, bottom);
        sketch.Line(SceneRole.FabricEdge, "", a, bottom, b, top);
    }

    private static void CallOut(Sketch sketch, GatePlan gate, double left, double right, double top, double bottom)
    {
        double tall = bottom - top, middle = (left + right) / 2;
        bool back = gate.SecondRoller is { } roller && roller.Metres < gate.NearFace.Metres;
        (double X, double Y)[] places = gate.Kind switch
        {
            GateKind.Walk => [(left, top + (tall * 0.12)), (right, top + (tall * 0.5))],
            GateKind.Double => [(left, top + (tall * 0.12)), (middle, top + (tall * 0.5)), (middle, bottom - (tall * 0.15))],
            GateKind.Cantilever => [(back ? left : right, top + (tall * 0.08)), (back ? right : left, top + (tall * 0.5))],
            GateKind.Rolling => [(middle, bottom - 2), (left, top + (tall * 0.08)), (right, top + (tall * 0.5))],
            _ => [(middle, top)],
        };
        foreach ((int i, (double X, double Y) at) in places.Index())
        {
            double to = at.X > middle + 1 ? -1 : 1;
            sketch.Callout(at.X + (to * 26), at.Y + (i == 2 ? 0 : 16), at.X, at.Y, (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture));
        }
    }

    private static (double From, double To) Tail(GatePlan gate, double near, double far, double tail)
    {
        bool before = gate.SecondRoller is { } roller && roller.Metres < near;
        return before ? (near - tail, near) : (far, far + tail);
    }

    private static void Leaf(Sketch sketch, double left, double right, double top, double bottom)
    {
        sketch.Box(SceneRole.Fabric, left, top, right, bottom);
        sketch.Line(SceneRole.Rail, "", left, top, right, top, right, bottom, left, bottom, left, top);
    }

    private static void Hinges(Sketch sketch, double x, double top, double bottom)
    {
        foreach (double part in (double[])[0.12, 0.88]) sketch.Box(SceneRole.Step, x - 3, top + ((bottom - top) * part) - 2, x + 3, top + ((bottom - top) * part) + 2);
    }
}
