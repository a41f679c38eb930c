namespace Tautline.Papers.Paper;

/// <summary>A part of a sheet, set under the one before.</summary>
public abstract record PaperBlock
{
    private protected PaperBlock()
    {
    }

    /// <summary>A heading; never left alone at the foot of a page.</summary>
    public sealed record Heading(string Text) : PaperBlock;

    /// <summary>Running text.</summary>
    /// <param name="Mark">What stands before it, as a bullet or a number; the text hangs behind it.</param>
    public sealed record Words(string Text, bool Strong = false, string Mark = "") : PaperBlock;

    /// <summary>Labelled figures, side by side in as many columns.</summary>
    public sealed record Facts(IReadOnlyList<(string Label, string Value)> Rows, int Columns = 1) : PaperBlock;

    /// <summary>Places to write on by hand: a line each, what it is for beneath.</summary>
    public sealed record Lines(IReadOnlyList<string> Labels) : PaperBlock;

    /// <summary>A drawing at its own size, which is at most the room of the page: a scale is never bent to fit.</summary>
    /// <param name="Caption">Over it, and never parted from it; may be empty.</param>
    public sealed record Drawing(Documents.Scenes.Scene Scene, string Caption = "") : PaperBlock;

    /// <summary>What follows starts on a new page.</summary>
    /// <param name="IfFirst">Only from the sheet's first page to its second: the other side of one sheet. What already runs over onto that side goes on.</param>
    public sealed record NewPage(bool IfFirst = false) : PaperBlock;
}
