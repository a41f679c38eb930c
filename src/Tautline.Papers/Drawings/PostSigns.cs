using Tautline.Documents.Scenes;
using Tautline.Engine.Layout;

namespace Tautline.Papers.Drawings;

/// <summary>A sign for each kind of post seen from above, told apart by its shape.</summary>
internal static class PostSigns
{
    public static readonly PostKind[] All = [PostKind.Line, PostKind.End, PostKind.Corner, PostKind.Gate, PostKind.Pull, PostKind.GradeBreak, PostKind.Change, PostKind.Tie];

    /// <param name="r">Half of how large it is.</param>
    public static void Draw(Sketch sketch, PostKind kind, double x, double y, double r, string tag)
    {
        switch (kind)
        {
            case PostKind.Line:
                sketch.Circle(SceneRole.PostTop, x, y, r * 0.6, tag);
                break;
            case PostKind.Corner:
                sketch.Box(SceneRole.Step, x - r, y - r, x + r, y + r, tag);
                break;
            case PostKind.Gate:
                sketch.Circle(SceneRole.PostTop, x, y, r * 1.15, tag);
                sketch.Circle(SceneRole.Step, x, y, r * 0.35);
                break;
            case PostKind.Pull:
                sketch.Shape(SceneRole.PostTop, tag, x, y - (r * 1.2), x + (r * 1.1), y + (r * 0.8), x - (r * 1.1), y + (r * 0.8));
                break;
            case PostKind.GradeBreak:
                sketch.Shape(SceneRole.PostTop, tag, x, y - (r * 1.3), x + (r * 1.3), y, x, y + (r * 1.3), x - (r * 1.3), y);
                break;
            case PostKind.Change:
                sketch.Shape(SceneRole.Step, tag, x, y - (r * 1.3), x + (r * 1.3), y, x, y + (r * 1.3), x - (r * 1.3), y);
                break;
            case PostKind.Tie:
                sketch.Line(SceneRole.Terminal, tag, x - r, y - r, x + r, y + r);
                sketch.Line(SceneRole.Terminal, "", x - r, y + r, x + r, y - r);
                break;
            default:
                sketch.Box(SceneRole.PostTop, x - r, y - r, x + r, y + r, tag);
                break;
        }
    }
}
