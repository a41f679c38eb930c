using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Whole nanometres of a length of a job that nobody has checked yet: no figure is too large, or none, to be drawn and mended.</summary>
internal static class Whole
{
    private const double Largest = 3e6;

    public static long Nm(Length length) => Tame(length).Nanometres;

    public static Length Tame(Length length) => double.IsNaN(length.Metres) ? Length.Zero : new(Math.Clamp(length.Metres, -Largest, Largest));

    /// <summary>A sum of lengths that stops short of what a number can hold.</summary>
    public static long Sum(long a, long b) => Math.Min(a + b, long.MaxValue / 4);
}
