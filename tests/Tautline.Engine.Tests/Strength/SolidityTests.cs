using Tautline.Engine.Reasons;
using Tautline.Engine.Strength.Wind;
using static Tautline.Engine.Tests.Strength.In;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Solidity of woven fabric against an independent integration: how much of a plane two crossing families of strips cover, counted at a million points.</summary>
public sealed class SolidityTests
{
    [Theory]
    [InlineData(2.0, 0.148, 0.1331)] // 2 in clear, 9 gauge
    [InlineData(2.0, 0.192, 0.1675)] // 6 gauge
    [InlineData(2.125, 0.120, 0.1040)]
    [InlineData(1.0, 0.148, 0.2412)]
    public void FourMeshesAgreeWithAnIntegration(double opening, double wire, double expected)
    {
        var found = Solidity.Mesh(Of(wire), Of(opening)).Value;
        Near(expected, found, 0.0001);
        Near(found, Covered(wire, opening + wire, 90), 0.0001);
        Near(found, Covered(wire, opening + wire, 75), 0.0001); // the diamond's angle does not matter
    }

    /// <summary>2-in mesh in 9 gauge with 2 in from centre to centre: 0.1425, reference structural.md 1.4.</summary>
    [Fact]
    public void CentreToCentreReading() => Near(0.1425, Solidity.OfCentres(Of(0.148), Of(2)).Value, 0.00005);

    /// <summary>Share of a rhombus of two families of strips that is covered.</summary>
    private static double Covered(double wire, double centres, double degrees)
    {
        const int points = 1_000_000;
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var covered = 0;
        for (var i = 1; i <= points; i++)
        {
            // Points spread evenly over the unit cell (multiples of two irrational numbers), along the two families' directions.
            var u = Math.IEEERemainder(i * 0.7548776662466927, 1) * centres / sin;
            var v = Math.IEEERemainder(i * 0.5698402909980532, 1) * centres / sin;
            var (x, y) = (u + v * cos, v * sin);
            if (Near(y, wire, centres) || Near(x * sin - y * cos, wire, centres)) covered++;
        }
        return covered / (double)points;

        static bool Near(double distance, double wire, double centres)
        {
            var at = distance - centres * Math.Floor(distance / centres);
            return at < wire / 2 || at > centres - wire / 2;
        }
    }
}
