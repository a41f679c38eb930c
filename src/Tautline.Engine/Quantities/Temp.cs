namespace Tautline.Engine.Quantities;
public static class LengthText { public static string Show(Length l, UnitSystem u) => $"{l.Feet:0.####} ft"; public static string Inches(Length l, int d) => $"{l.Inches:0.##} in"; }
