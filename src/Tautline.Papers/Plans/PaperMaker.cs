using Tautline.Documents.Paper;
using Tautline.Engine.Plans;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans.Office;
using Tautline.Papers.Plans.Packet;

namespace Tautline.Papers.Plans;

/// <summary>The papers by name.</summary>
public static class PaperMaker
{
    /// <summary>For those with all the time in the world.</summary>
    internal static readonly Func<int, int, Task> NoPause = (_, _) => Task.CompletedTask;

    /// <exception cref="ArgumentException">The plan has errors.</exception>
    public static PaperDocument Of(PaperKind kind, Plan plan, PaperChoice choice) => OfAsync(kind, plan, choice, NoPause).GetAwaiter().GetResult();

    /// <param name="pause">Called after each sheet of a long paper with how many are made, of how many: a page can show it and draw itself meanwhile.</param>
    /// <exception cref="ArgumentException">The plan has errors.</exception>
    public static async Task<PaperDocument> OfAsync(PaperKind kind, Plan plan, PaperChoice choice, Func<int, int, Task> pause) => kind switch
    {
        PaperKind.Packet => await CrewPacket.OfAsync(plan, choice, pause),
        PaperKind.Drawings => DrawingPaper.Of(plan, choice),
        PaperKind.Site => DrawingPaper.Site(plan, choice),
        PaperKind.Takeoff => TakeoffPaper.Of(plan, choice, reasons: false),
        PaperKind.Reasons => TakeoffPaper.Of(plan, choice, reasons: true),
        PaperKind.Submittal => SubmittalPaper.Of(plan, choice),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such paper."),
    };
}
