namespace Tautline.Documents.Scenes;

/// <summary>Which part of a profile is drawn, and how.</summary>
/// <param name="From">Level station, metres.</param>
/// <param name="To">Past <paramref name="From"/>.</param>
/// <param name="Width">Of the drawing.</param>
/// <param name="Height">Of the drawing.</param>
/// <param name="Exaggeration">How many times taller than true heights are drawn; 0 for as many of 1, 2, 5, 10 as fit.</param>
public readonly record struct ProfileSight(double From, double To, double Width, double Height, double Exaggeration = 0)
{
    /// <summary>Height of the type.</summary>
    public double Type { get; init; } = 9;

    /// <summary>Whether parts to point at are drawn too; paper has no use for them.</summary>
    public bool ForScreen { get; init; }
}
