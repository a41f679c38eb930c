using CsCheck;

namespace Tautline.Fit.Tests;

/// <summary>
/// The same random inputs at every run. How often other seeds find an input on which the fit does not come to rest stands in docs/performance.md;
/// a fit that does not says so in its certificate.
/// </summary>
internal static class FixedInputs
{
    private const string Seed = "0N0XIzNsQ0O2";

    public static void Each<T>(this Gen<T> gen, Action<T> check, int count)
    {
        var inputs = gen.Array[count].Single(_ => true, Seed);
        for (var i = 0; i < count; i++)
            if (Record.Exception(() => check(inputs[i])) is { } fault) Assert.Fail($"input {i}: {fault}");
    }
}
