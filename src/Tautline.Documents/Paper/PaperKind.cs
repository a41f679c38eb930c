namespace Tautline.Documents.Paper;

/// <summary>A paper that is made of one plan.</summary>
public enum PaperKind
{
    /// <summary>What goes out to the crew.</summary>
    Packet,

    /// <summary>Site plan, profiles, elevations, terminals, gates.</summary>
    Drawings,

    /// <summary>The site plan alone.</summary>
    Site,
    Takeoff,

    /// <summary>The take-off with why each figure is what it is.</summary>
    Reasons,
    Submittal,
}
