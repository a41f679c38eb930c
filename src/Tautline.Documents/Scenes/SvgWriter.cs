using System.Globalization;
using System.Text;

namespace Tautline.Documents.Scenes;

/// <summary>Writes a scene as SVG 1.1: the same text for the same scene, whatever the culture.</summary>
public static class SvgWriter
{
    private const double Hatch = 5;

    /// <summary>The whole drawing as a file of its own, with its styles, black on white.</summary>
    /// <param name="title">What a reading aid says of it.</param>
    public static string File(Scene scene, string title)
    {
        var text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        Open(text, scene, $" width=\"{N(scene.Width)}\" height=\"{N(scene.Height)}\" role=\"img\"");
        text.Append("<title>");
        Escape(text, title);
        text.Append("</title>\n<style>");
        foreach (SceneRole role in scene.Items.Select(i => i.Role).Distinct().Order()) text.Append(Style(role));
        text.Append("text{font-family:sans-serif}</style>\n");
        Patterns(text, scene, "#000");
        Items(text, scene);
        return text.Append("</svg>\n").ToString();
    }

    /// <summary>The drawing for a page that has its own styles, by class: the name of the role in small letters behind 's-'.</summary>
    public static string Fragment(Scene scene)
    {
        var text = new StringBuilder(scene.Items.Count * 60);
        Open(text, scene, " aria-hidden=\"true\"");
        Patterns(text, scene, "currentColor");
        Items(text, scene);
        return text.Append("</svg>").ToString();
    }

    private static void Open(StringBuilder text, Scene scene, string more) =>
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {N(scene.Width)} {N(scene.Height)}\"{more}>\n");

    private static void Items(StringBuilder text, Scene scene)
    {
        foreach (SceneItem item in scene.Items)
        {
            switch (item)
            {
                case SceneItem.Path path:
                    Element(text, "path", item);
                    text.Append(" d=\"");
                    Trace(text, path);
                    text.Append("\"/>\n");
                    break;
                case SceneItem.Circle circle:
                    Element(text, "circle", item);
                    text.Append(CultureInfo.InvariantCulture, $" cx=\"{N(circle.X)}\" cy=\"{N(circle.Y)}\" r=\"{N(circle.Radius)}\"/>\n");
                    break;
                case SceneItem.Arc arc:
                    Element(text, "path", item);
                    Turn(text, arc);
                    break;
                case SceneItem.Text words:
                    Words(text, words);
                    break;
            }
        }
    }

    private static void Element(StringBuilder text, string name, SceneItem item)
    {
        text.Append('<').Append(name).Append(" class=\"s-").Append(Name(item.Role)).Append('"');
        if (item.Tag.Length == 0) return;
        text.Append(" data-tag=\"");
        Escape(text, item.Tag);
        text.Append('"');
    }

    private static void Trace(StringBuilder text, SceneItem.Path path)
    {
        for (int i = 0; i + 1 < path.Points.Count; i += 2)
            text.Append(i == 0 ? 'M' : 'L').Append(N(path.Points[i])).Append(' ').Append(N(path.Points[i + 1]));
        if (path.Closed) text.Append('Z');
    }

    private static void Turn(StringBuilder text, SceneItem.Arc arc)
    {
        (double Sin, double Cos) from = Math.SinCos(arc.From * Math.PI / 180), to = Math.SinCos((arc.From + Math.Min(arc.Sweep, 359.99)) * Math.PI / 180);
        text.Append(CultureInfo.InvariantCulture, $" d=\"M{N(arc.X + (arc.Radius * from.Cos))} {N(arc.Y + (arc.Radius * from.Sin))}A{N(arc.Radius)} {N(arc.Radius)} 0 {(arc.Sweep > 180 ? 1 : 0)} 1 ");
        text.Append(CultureInfo.InvariantCulture, $"{N(arc.X + (arc.Radius * to.Cos))} {N(arc.Y + (arc.Radius * to.Sin))}\"/>\n");
    }

    private static void Words(StringBuilder text, SceneItem.Text words)
    {
        Element(text, "text", words);
        string anchor = words.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\"", TextAnchor.End => " text-anchor=\"end\"", _ => "" };
        text.Append(CultureInfo.InvariantCulture, $" x=\"{N(words.X)}\" y=\"{N(words.Y)}\" font-size=\"{N(words.Size)}\"{anchor}");
        if (words.Angle != 0) text.Append(CultureInfo.InvariantCulture, $" transform=\"rotate({N(words.Angle)} {N(words.X)} {N(words.Y)})\"");
        text.Append('>');
        Escape(text, words.Words);
        text.Append("</text>\n");
    }

    private static void Patterns(StringBuilder text, Scene scene, string ink)
    {
        SceneFill[] fills = [.. scene.Items.Select(i => RoleStyle.Of(i.Role).Fill).Where(f => f >= SceneFill.Mesh).Distinct().Order()];
        if (fills.Length == 0) return;
        text.Append("<defs>");
        foreach (SceneFill fill in fills)
        {
            text.Append(CultureInfo.InvariantCulture, $"<pattern id=\"s-fill-{Name(fill)}\" patternUnits=\"userSpaceOnUse\" width=\"{Hatch}\" height=\"{Hatch}\"><path fill=\"none\" stroke=\"{ink}\" stroke-width=\"{(fill == SceneFill.Mesh ? "0.35" : "0.8")}\" d=\"{Strokes(fill)}\"/></pattern>");
        }

        text.Append("</defs>\n");
    }

    private static string Strokes(SceneFill fill) => fill switch
    {
        SceneFill.Mesh => "M0 2.5L2.5 0L5 2.5L2.5 5Z",
        SceneFill.Rising => "M-1 1L1 -1M0 5L5 0M4 6L6 4",
        SceneFill.Falling => "M-1 4L1 6M0 0L5 5M4 -1L6 1",
        _ => "M1 1h0.8M3.5 3.5h0.8",
    };

    private static string Style(SceneRole role)
    {
        RoleStyle style = RoleStyle.Of(role);
        string grey = string.Create(CultureInfo.InvariantCulture, $"rgb({(int)(style.Grey * 255)},{(int)(style.Grey * 255)},{(int)(style.Grey * 255)})");
        string fill = style.Fill switch
        {
            SceneFill.None => "none",
            SceneFill.Paper => "#fff",
            SceneFill.Ink or SceneFill.Wash => grey,
            _ => $"url(#s-fill-{Name(style.Fill)})",
        };
        string dash = style.Dash > 0 ? string.Create(CultureInfo.InvariantCulture, $";stroke-dasharray:{N(style.Dash)}") : "";
        string stroke = style.Pen > 0 ? string.Create(CultureInfo.InvariantCulture, $"{grey};stroke-width:{N(style.Pen)}{dash}") : "none";
        return $".s-{Name(role)}{{fill:{fill};stroke:{stroke}}}text.s-{Name(role)}{{fill:{grey};stroke:#fff;stroke-width:2.4;stroke-dasharray:none;paint-order:stroke{(style.Bold ? ";font-weight:bold" : "")}}}";
    }

    private static string Name<T>(T name) where T : struct, Enum => name.ToString().ToLowerInvariant();

    private static string N(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static void Escape(StringBuilder text, string words)
    {
        foreach (char sign in words)
        {
            _ = sign switch
            {
                '&' => text.Append("&amp;"),
                '<' => text.Append("&lt;"),
                '>' => text.Append("&gt;"),
                '"' => text.Append("&quot;"),
                < ' ' => text.Append(' '),
                _ => text.Append(sign),
            };
        }
    }
}
