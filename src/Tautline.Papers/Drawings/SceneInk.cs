using PdfSharp.Drawing;
using Tautline.Documents.Scenes;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Papers.Drawings;

/// <summary>Draws a scene on a page, in the looks of its roles. It works nothing out.</summary>
internal sealed class SceneInk(XGraphics graphics, TextMeasure measure)
{
    private const double Hatch = 5;

    public void Draw(Scene scene, double x, double y)
    {
        XGraphicsState before = graphics.Save();
        graphics.TranslateTransform(x, y);
        foreach (SceneItem item in scene.Items) Draw(item);
        graphics.Restore(before);
    }

    private void Draw(SceneItem item)
    {
        RoleStyle style = RoleStyle.Of(item.Role);
        switch (item)
        {
            case SceneItem.Path path when path.Points.Count >= 4:
                XPoint[] points = [.. Enumerable.Range(0, path.Points.Count / 2).Select(i => new XPoint(path.Points[2 * i], path.Points[(2 * i) + 1]))];
                if (path.Closed) Fill(points, style);
                Stroke(points, path.Closed, style);
                break;
            case SceneItem.Circle circle:
                double d = 2 * circle.Radius;
                if (Brush(style) is { } brush) graphics.DrawEllipse(brush, circle.X - circle.Radius, circle.Y - circle.Radius, d, d);
                if (Pen(style) is { } rim) graphics.DrawEllipse(rim, circle.X - circle.Radius, circle.Y - circle.Radius, d, d);
                break;
            case SceneItem.Arc arc:
                if (Pen(style) is { } line) graphics.DrawArc(line, arc.X - arc.Radius, arc.Y - arc.Radius, 2 * arc.Radius, 2 * arc.Radius, arc.From, arc.Sweep);
                break;
            case SceneItem.Text text when text.Words.Length > 0:
                Words(text, style);
                break;
        }
    }

    private void Stroke(XPoint[] points, bool closed, RoleStyle style)
    {
        if (Pen(style) is not { } pen) return;
        if (closed) graphics.DrawPolygon(pen, points);
        else graphics.DrawLines(pen, points);
    }

    private void Fill(XPoint[] points, RoleStyle style)
    {
        if (points.Length < 3 || style.Fill == SceneFill.None) return;
        if (Brush(style) is { } brush) graphics.DrawPolygon(brush, points, XFillMode.Winding);
        else Hatched(points, style);
    }

    /// <summary>A pattern as strokes of its own, cut off at the outline: no reader has to know how to tile.</summary>
    private void Hatched(XPoint[] points, RoleStyle style)
    {
        (double left, double right) = (points.Min(p => p.X), points.Max(p => p.X));
        (double top, double bottom) = (points.Min(p => p.Y), points.Max(p => p.Y));
        if (right - left < 0.2 || bottom - top < 0.2 || (style.Fill == SceneFill.Dots && right - left < Hatch)) return;
        XGraphicsState before = graphics.Save();
        var outline = new XGraphicsPath();
        outline.AddPolygon(points);
        graphics.IntersectClip(outline);
        var pen = new XPen(XColor.FromGrayScale(style.Fill == SceneFill.Mesh ? style.Grey : 0.25), style.Fill == SceneFill.Mesh ? 0.25 : 0.4);
        double tall = bottom - top;
        if (style.Fill == SceneFill.Dots) Dots(left, right, top, bottom);
        if (style.Fill is SceneFill.Mesh or SceneFill.Rising)
            for (double at = First(left + top, Hatch); at < right + bottom; at += Hatch) graphics.DrawLine(pen, at - top, top, at - bottom, bottom);
        if (style.Fill is SceneFill.Mesh or SceneFill.Falling)
            for (double at = First(left - bottom, Hatch); at < right - top; at += Hatch) graphics.DrawLine(pen, at + top, top, at + top + tall, bottom);
        graphics.Restore(before);
    }

    private void Dots(double left, double right, double top, double bottom)
    {
        for (double y = First(top, Hatch / 2); y < bottom; y += Hatch / 2)
            for (double x = First(left, Hatch) + (Math.Round(2 * y / Hatch) % 2 == 0 ? 0 : Hatch / 2); x < right; x += Hatch)
                graphics.DrawRectangle(XBrushes.Black, x, y, 0.5, 0.5);
    }

    /// <summary>Patterns of neighbours meet: they all begin at the same corner of the drawing.</summary>
    private static double First(double from, double step) => Math.Floor(from / step) * step;

    private void Words(SceneItem.Text text, RoleStyle style)
    {
        var type = new TextStyle(text.Size, style.Bold, style.Grey);
        string words = measure.Printable(text.Words, type);
        double wide = measure.Width(words, type);
        double left = text.Anchor switch { TextAnchor.Middle => text.X - (wide / 2), TextAnchor.End => text.X - wide, _ => text.X };
        XGraphicsState before = graphics.Save();
        if (text.Angle != 0) graphics.RotateAtTransform(text.Angle, new XPoint(text.X, text.Y));
        // Paper under the words, so that no line runs through them.
        if (text.Role is not SceneRole.Warning and not SceneRole.Error) graphics.DrawRectangle(XBrushes.White, left - 0.6, text.Y - (0.78 * text.Size), wide + 1.2, text.Size);
        graphics.DrawString(words, measure.Font(type), new XSolidBrush(XColor.FromGrayScale(style.Grey)), left, text.Y);
        graphics.Restore(before);
    }

    private static XPen? Pen(RoleStyle style)
    {
        if (style.Pen <= 0) return null;
        var pen = new XPen(XColor.FromGrayScale(style.Grey), style.Pen) { LineJoin = XLineJoin.Round, LineCap = XLineCap.Round };
        if (style.Dash > 0)
        {
            pen.LineCap = XLineCap.Flat;
            pen.DashPattern = [style.Dash / style.Pen, style.Dash / style.Pen];
        }

        return pen;
    }

    private static XSolidBrush? Brush(RoleStyle style) => style.Fill switch
    {
        SceneFill.Paper => XBrushes.White,
        SceneFill.Ink or SceneFill.Wash => new XSolidBrush(XColor.FromGrayScale(style.Grey)),
        _ => null,
    };
}
