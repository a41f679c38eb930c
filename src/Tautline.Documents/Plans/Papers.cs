using Tautline.Documents.Paper;
using Tautline.Documents.Plans.Office;
using Tautline.Documents.Plans.Packet;
using Tautline.Engine.Plans;

namespace Tautline.Documents.Plans;

/// <summary>A paper that is made of one plan.</summary>
public enum PaperKind
{
    /// <summary>What goes out to the crew.</summary>
    Packet,

    /// <summary>Site plan, profiles, elevations, terminals, gates.</summary>
    Drawings,
    Takeoff,

    /// <summary>The take-off with why each figure is what it is.</summary>
    Reasons,
    Submittal,
}

/// <summary>The papers by name.</summary>
public static class Papers
{
    /// <param name="made">Told how many sheets are made, of how many.</param>
    /// <exception cref="ArgumentException">The plan has errors.</exception>
    public static PaperDocument Of(PaperKind kind, Plan plan, PaperChoice choice, Action<int, int>? made = null) => kind switch
    {
        PaperKind.Packet => CrewPacket.Of(plan, choice, made),
        PaperKind.Drawings => DrawingPaper.Of(plan, choice),
        PaperKind.Takeoff => TakeoffPaper.Of(plan, choice, reasons: false),
        PaperKind.Reasons => TakeoffPaper.Of(plan, choice, reasons: true),
        PaperKind.Submittal => SubmittalPaper.Of(plan, choice),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such paper."),
    };
}
