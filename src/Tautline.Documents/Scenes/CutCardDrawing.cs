using Tautline.Documents.Words;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;

namespace Tautline.Documents.Scenes;

/// <summary>
/// A bias cut in the true proportion of its diamonds: wire that stays, wire that comes off, the path of the cut with its steps numbered from the top, each
/// with the row it is taken at, and where the bar will stand.
/// </summary>
public static class CutCardDrawing
{
    private const double Type = 9;

    /// <param name="end">0 for the start of the run, 1 for its far end.</param>
    /// <returns>Nothing where no picket is crossed, or none can be.</returns>
    public static Scene? Of(Plan plan, int line, int run, int end, double width, double height, Phrases say)
    {
        CutCard card = HangCards.Cut(plan, line, run, end);
        if (card.Columns == 0 || card.Path.Count == 0) return null;
        SpecPlan spec = plan.Specs.First(s => s.Id == plan.Lines[line].Runs[run].Spec);
        double advance = (spec.AdvanceLow.Metres + spec.AdvanceHigh.Metres) / 2;
        return Of(card, 2 * advance, 2 * spec.HalfDiamond.Metres, width, height, say);
    }

    /// <param name="wide">Width of a diamond, metres.</param>
    /// <param name="tall">Its height.</param>
    public static Scene Of(CutCard card, double wide, double tall, double width, double height, Phrases say)
    {
        IEnumerable<CutStroke> all = card.Mesh.Concat(card.Path);
        (double left, double right) = (all.Min(s => Math.Min(s.FromX, s.ToX)), all.Max(s => Math.Max(s.FromX, s.ToX)));
        (double top, double margin) = (Type * 2.6, Type * 6);
        double scale = Math.Min((width - (2 * margin)) / ((right - left) * wide), (height - (2 * top)) / (card.Rows * tall));
        double start = (width - ((right - left) * wide * scale)) / 2;
        double X(double diamonds) => start + ((diamonds - left) * wide * scale);
        double Y(double diamonds) => top + (diamonds * tall * scale);
        List<SceneItem> items = [];
        foreach (CutStroke stroke in card.Mesh.OrderByDescending(s => s.Line)) items.Add(Drawn(stroke, X, Y));
        items.Add(new SceneItem.Path(SceneRole.Hidden, [X(card.Path[0].FromX), Y(0), X(card.Path[^1].ToX), Y(card.Rows)]));
        foreach (CutStroke stroke in card.Path) items.Add(Drawn(stroke, X, Y));
        Label(card, items, X(right), Y, say, width);
        items.Add(new SceneItem.Text(SceneRole.Strong, X(right) - 4, top - (Type * 0.9), say["card.roll"], Type, TextAnchor.End));
        items.Add(new SceneItem.Text(SceneRole.Strong, X(right) + 4, top - (Type * 0.9), say["card.terminal"], Type));
        string count = say.Say("card.count", ("columns", card.Columns), ("rows", card.Rows));
        double type = Math.Clamp(Type * (width - 8) / Math.Max(1, LabelBoard.Wide(SceneRole.Label, count, Type)), 5, Type);
        items.Add(new SceneItem.Text(SceneRole.Label, width / 2, height - (Type * 0.6), count, type, TextAnchor.Middle));
        return new(width, height, items, scale);
    }

    private static SceneItem Drawn(CutStroke stroke, Func<double, double> x, Func<double, double> y)
    {
        SceneRole role = stroke.Line switch
        {
            CutLine.Kept => SceneRole.Wire,
            CutLine.TakenOff => SceneRole.WireOff,
            CutLine.StepOver => SceneRole.Step,
            _ => SceneRole.CutPath,
        };
        double[] points = [x(stroke.FromX), y(stroke.FromY), x(stroke.ToX), y(stroke.ToY)];
        return role == SceneRole.Step && stroke.FromX == stroke.ToX ? new SceneItem.Circle(role, points[0], points[1], 2) : new SceneItem.Path(role, points);
    }

    /// <summary>At each step its number, and the row counted from the top; every so many of them where they stand close.</summary>
    private static void Label(CutCard card, List<SceneItem> items, double right, Func<double, double> y, Phrases say, double width)
    {
        var labels = new LabelBoard(width, y(card.Rows) + Type);
        for (int i = 0; i < card.Crossings.Count; i++)
        {
            string text = say.Say("card.step", ("n", i + 1), ("row", DiamondText.Number(card.Crossings[i])));
            if (labels.Place(SceneRole.Label, right + 6, y(card.Crossings[i]) + (Type * 0.35), text, Type, TextAnchor.Start) is not { } label) continue;
            items.Add(label);
            items.Add(new SceneItem.Path(SceneRole.Dimension, [right + 1, y(card.Crossings[i]), right + 5, y(card.Crossings[i])]));
        }
    }
}
