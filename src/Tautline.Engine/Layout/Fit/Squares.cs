using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The sum of squares of the last phase: per post one bend (b0*x(i) + b1*x(i+1) + b2*x(i+2) + b)^2 led by i and one deviation
/// (g*x(i) + d)^2.
/// </summary>
internal sealed class Squares
{
    public Squares(int posts)
        => (B0, B1, B2, B, G, D) = (new double[posts], new double[posts], new double[posts], new double[posts], new double[posts], new double[posts]);

    public double[] B0 { get; }

    public double[] B1 { get; }

    public double[] B2 { get; }

    public double[] B { get; }

    public double[] G { get; }

    public double[] D { get; }

    public double Bend(int i, double[] x) => B0[i] * x[i] + B1[i] * x[i + 1] + B2[i] * x[i + 2] + B[i];

    public double Deviation(int i, double[] x) => G[i] * x[i] + D[i];

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Value(double[] x)
    {
        var sum = 0.0;
        for (var i = 0; i < G.Length; i++)
        {
            var (bend, deviation) = (Bend(i, x), Deviation(i, x));
            sum += bend * bend + deviation * deviation;
        }
        return sum;
    }

    /// <summary>Adds scale times half the gradient.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void AddGradient(double[] x, double scale, double[] into)
    {
        for (var i = 0; i < G.Length; i++)
        {
            var (bend, deviation) = (scale * Bend(i, x), scale * Deviation(i, x));
            into[i] += B0[i] * bend + G[i] * deviation;
            into[i + 1] += B1[i] * bend;
            into[i + 2] += B2[i] * bend;
        }
    }
}
