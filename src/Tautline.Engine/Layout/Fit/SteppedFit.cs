namespace Tautline.Engine.Layout.Fit;
internal static class SteppedFit { public static FittedLine Fit(FitInput input) => throw new InvalidOperationException(); }
