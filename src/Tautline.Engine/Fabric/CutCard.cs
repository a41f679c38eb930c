using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>What a stroke of a cut drawing shows.</summary>
public enum CutLine
{
    /// <summary>Wire that stays.</summary>
    Kept,

    /// <summary>Wire that comes off.</summary>
    TakenOff,

    /// <summary>Wire of the picket that ends the fabric: the path that the bar follows.</summary>
    Path,

    /// <summary>Where the cut steps over to the next picket; a point where the two meet in an interlock.</summary>
    StepOver,
}

/// <summary>
/// A straight stroke in diamonds: x outwards from the inner side of the picket that ends the edge cut back, one picket being half a diamond;
/// y down from the top edge. Fabric kept lies at smaller x.
/// </summary>
public readonly record struct CutStroke(CutLine Line, double FromX, double FromY, double ToX, double ToY);

/// <summary>A bias cut on one sheet: drawn with letters for any paper, as strokes for a drawing, and in words.</summary>
/// <param name="Path">Kept path strokes from the top down, joined end to end; step-overs among them.</param>
/// <param name="Mesh">The wires around it.</param>
/// <param name="Words">Steps in order, a sentence each.</param>
/// <param name="Drawing">Lines of at most 79 letters.</param>
public sealed record CutCard(
    BiasCut Cut, Length Waste, IReadOnlyList<CutStroke> Path, IReadOnlyList<CutStroke> Mesh, IReadOnlyList<string> Words,
    IReadOnlyList<string> Drawing)
{
    public int Columns => Cut.Columns;

    public int Rows => Cut.Rows;

    public IReadOnlyList<double> Crossings => Cut.Crossings;

    public LongEdge LongEdge => Cut.LongEdge;

    /// <summary>A cut that cannot be made has words alone.</summary>
    public static CutCard Of(BiasCut cut, Length advance) => cut.Cuttable
        ? new(cut, cut.Waste(advance), CutDrawing.Path(cut), CutDrawing.Mesh(cut), HangWords.Cut(cut), CutDrawing.Letters(cut))
        : new(cut, Length.Zero, [], [], HangWords.Cut(cut), []);
}
