using Tautline.Documents.Scenes;

namespace Tautline.Papers.Drawings;

/// <summary>Sets drawings in a row, each from its own top.</summary>
public static class SideBySide
{
    private const double Type = 8.5;

    /// <param name="captions">Over each; none where the list is empty.</param>
    public static Scene Of(IReadOnlyList<Scene> scenes, IReadOnlyList<string> captions)
    {
        List<SceneItem> items = [];
        double left = 0, down = captions.Count > 0 ? Type * 1.5 : 0;
        foreach ((int i, Scene scene) in scenes.Index())
        {
            double by = left;
            items.AddRange(scene.Items.Select(item => Moved(item, by, down)));
            if (i < captions.Count) items.Add(new SceneItem.Text(SceneRole.Strong, left + 4, Type, captions[i], Type));
            left += scene.Width;
        }

        return new(left, scenes.Count == 0 ? 0 : scenes.Max(s => s.Height) + down, items);
    }

    private static SceneItem Moved(SceneItem item, double by, double down) => item switch
    {
        SceneItem.Path path => path with { Points = [.. path.Points.Select((v, i) => i % 2 == 0 ? v + by : v + down)] },
        SceneItem.Circle circle => circle with { X = circle.X + by, Y = circle.Y + down },
        SceneItem.Arc arc => arc with { X = arc.X + by, Y = arc.Y + down },
        SceneItem.Text text => text with { X = text.X + by, Y = text.Y + down },
        _ => item,
    };
}
