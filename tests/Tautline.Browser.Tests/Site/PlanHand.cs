using System.Globalization;
using Microsoft.Playwright;

namespace Tautline.Browser.Tests.Site;

/// <summary>A hand on the plan: places are told in feet of the site and turned into pixels by what the drawing says of its view.</summary>
internal static class PlanHand
{
    public static ILocator Sheet(Visit visit) => visit.Page.Locator(".map-sheet");

    public static Task UseAsync(Visit visit, string tool) =>
        visit.Page.GetByRole(AriaRole.Toolbar, new() { Name = "Tools of the plan" }).GetByRole(AriaRole.Button, new() { Name = tool, Exact = true }).ClickAsync();

    public static async Task<(float X, float Y)> PixelAsync(Visit visit, double eastFeet, double northFeet)
    {
        double[] view = [.. (await Sheet(visit).GetAttributeAsync("data-view"))!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        LocatorBoundingBoxResult box = (await Sheet(visit).BoundingBoxAsync())!;
        return ((float)(box.X + box.Width / 2 + (eastFeet * 0.3048 - view[0]) / view[2]), (float)(box.Y + box.Height / 2 + (view[1] - northFeet * 0.3048) / view[2]));
    }

    public static async Task ClickAsync(Visit visit, double eastFeet, double northFeet)
    {
        (float x, float y) = await PixelAsync(visit, eastFeet, northFeet);
        await visit.Page.Mouse.ClickAsync(x, y);
    }

    public static async Task DragAsync(Visit visit, (double East, double North) from, (double East, double North) to)
    {
        (float x, float y) = await PixelAsync(visit, from.East, from.North);
        (float tx, float ty) = await PixelAsync(visit, to.East, to.North);
        await visit.Page.Mouse.MoveAsync(x, y);
        await visit.Page.Mouse.DownAsync();
        await visit.Page.Mouse.MoveAsync(tx, ty, new() { Steps = 8 });
        await visit.Page.Mouse.UpAsync();
    }
}
