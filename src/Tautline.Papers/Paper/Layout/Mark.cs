namespace Tautline.Papers.Paper.Layout;

/// <summary>Something at a place on the page, in points from the top left corner.</summary>
internal abstract record Mark
{
    private Mark()
    {
    }

    public abstract Mark Down(double by);

    /// <summary>One line of text; Y is its base line.</summary>
    public sealed record Words(double X, double Y, string Text, TextStyle Style) : Mark
    {
        public override Mark Down(double by) => this with { Y = Y + by };
    }

    /// <summary>A horizontal line.</summary>
    public sealed record Rule(double X, double Y, double Width, double Thickness, double Grey) : Mark
    {
        public override Mark Down(double by) => this with { Y = Y + by };
    }

    /// <summary>A frame around something.</summary>
    public sealed record Frame(double X, double Y, double Width, double Height, double Thickness) : Mark
    {
        public override Mark Down(double by) => this with { Y = Y + by };
    }

    /// <summary>A drawing, its own top left corner at this place.</summary>
    public sealed record Drawing(double X, double Y, Documents.Scenes.Scene Scene) : Mark
    {
        public override Mark Down(double by) => this with { Y = Y + by };
    }

    /// <summary>A code for cameras: dark squares row by row, quiet rim included.</summary>
    public sealed record Code(double X, double Y, double Size, CodeMatrix Matrix) : Mark
    {
        public override Mark Down(double by) => this with { Y = Y + by };
    }
}
