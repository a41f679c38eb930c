using Tautline.Documents.Scenes;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>The site from above, on a page of its own.</summary>
internal static class SiteSheet
{
    public static PaperSheet Of(PacketDesk desk)
    {
        (PaperFormat format, Scene? scene) = Drawn(desk);
        return desk.Sheet(desk.Say["paper.site"], "site") with { Format = format, Blocks = scene is null ? [] : [new PaperBlock.Drawing(scene)] };
    }

    /// <summary>The drawing on the paper held as it suits the site.</summary>
    public static (PaperFormat Format, Scene? Scene) Drawn(PacketDesk desk)
    {
        PlanPicture picture = PictureStage.Of(desk.Plan, desk.Choice.Units);
        bool wide = picture.Extent[2] - picture.Extent[0] > picture.Extent[3] - picture.Extent[1];
        var format = new PaperFormat(desk.Choice.Format.Size, wide);
        return (format, SitePlanDrawing.Of(desk.Plan, picture, format.RoomWidth, format.RoomHeight, desk.Say.Words, desk.Choice.Say));
    }
}
