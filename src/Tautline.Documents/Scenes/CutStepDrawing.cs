using Tautline.Documents.Words;
using Tautline.Engine.Fabric;

namespace Tautline.Documents.Scenes;

/// <summary>One step of a bias cut, large: a few diamonds about the place where the cutter stands, with the way he steps.</summary>
public static class CutStepDrawing
{
    private const double Above = 2.5, Rows = 4, Type = 13;

    /// <summary>Steps there are: where it begins, each crossing, where it runs out.</summary>
    public static int Steps(CutCard card) => card.Crossings.Count + 2;

    /// <param name="step">From 0: the beginning at the top, then the crossings, at last the bottom.</param>
    /// <param name="wide">Width of a diamond, metres.</param>
    /// <param name="tall">Its height.</param>
    public static Scene Of(CutCard card, int step, double wide, double tall, double width, double height, Phrases say)
    {
        double row = step == 0 ? 0 : step > card.Crossings.Count ? card.Rows : card.Crossings[step - 1];
        double top = Math.Clamp(row - Above, -0.4, card.Rows + 0.4 - Rows);
        double scale = height / (Rows * tall), middle = Middle(card, row);
        double X(double diamonds) => (width / 2) + ((diamonds - middle) * wide * scale);
        double Y(double diamonds) => (diamonds - top) * tall * scale;
        List<SceneItem> items = [new SceneItem.Circle(SceneRole.Warning, X(middle), Y(row), tall * scale * 0.3)];
        foreach (CutStroke stroke in card.Mesh.Concat(card.Path).Where(s => Seen(s, top)).OrderBy(s => s.Line is CutLine.Path or CutLine.StepOver))
            Draw(stroke, X, Y, width, items);
        foreach (double at in card.Crossings.Prepend(0).Append(card.Rows).Where(c => c >= top && c <= top + Rows))
            items.Add(new SceneItem.Text(SceneRole.Strong, 6, Math.Clamp(Y(at) + (Type * 0.35), Type, height - 4), HangPhrases.Diamonds(at), at == row ? Type * 1.4 : Type));
        items.Add(new SceneItem.Text(SceneRole.Label, width - 4, Type * 1.2, say["card.terminal"], Type, TextAnchor.End));
        items.Add(new SceneItem.Text(SceneRole.Label, 44, Type * 1.2, say["card.roll"], Type));
        return new(width, height, items, scale);
    }

    /// <summary>Where across the fabric the cut is at a row: amid its step where it steps there.</summary>
    private static double Middle(CutCard card, double row)
    {
        CutStroke step = card.Path.FirstOrDefault(s => s.Line == CutLine.StepOver && s.FromY == row);
        if (step.Line == CutLine.StepOver) return (step.FromX + step.ToX) / 2;
        return row <= 0 ? card.Path[0].FromX : card.Path[^1].ToX;
    }

    private static bool Seen(CutStroke stroke, double top) => Math.Max(stroke.FromY, stroke.ToY) > top && Math.Min(stroke.FromY, stroke.ToY) < top + Rows;

    private static void Draw(CutStroke stroke, Func<double, double> x, Func<double, double> y, double width, List<SceneItem> items)
    {
        double[] points = [x(stroke.FromX), y(stroke.FromY), x(stroke.ToX), y(stroke.ToY)];
        if (Math.Max(points[0], points[2]) < 0 || Math.Min(points[0], points[2]) > width) return;
        SceneRole role = stroke.Line switch { CutLine.Kept => SceneRole.Wire, CutLine.TakenOff => SceneRole.WireOff, CutLine.StepOver => SceneRole.Step, _ => SceneRole.CutPath };
        items.Add(new SceneItem.Path(role, points));
    }
}
