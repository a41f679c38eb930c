namespace Tautline.Papers.Paper.Layout;

/// <summary>How a piece of text is set. Sizes are in points; one line of text takes <see cref="Leading"/>.</summary>
internal readonly record struct TextStyle(double Size, bool Bold, double Grey)
{
    public static readonly TextStyle Title = new(16, true, 0);
    public static readonly TextStyle Subtitle = new(9.5, false, 0.15);
    public static readonly TextStyle Caption = new(10.5, true, 0);
    public static readonly TextStyle Header = new(8, true, 0.15);
    public static readonly TextStyle Cell = new(8.5, false, 0);
    public static readonly TextStyle Note = new(8.5, false, 0);
    public static readonly TextStyle Caution = new(8, false, 0);
    public static readonly TextStyle Warning = new(8.5, true, 0);
    public static readonly TextStyle Foot = new(7, false, 0.3);

    /// <summary>From one line of text to the next.</summary>
    public double Leading => Size * 1.3;

    /// <summary>From the top of a line of text down to its base line.</summary>
    public double Ascent => Size * 1.02;
}
