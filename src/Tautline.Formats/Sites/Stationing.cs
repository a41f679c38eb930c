using System.Collections.Immutable;
using System.Globalization;

namespace Tautline.Formats.Sites;

/// <summary>Where the names of stations jump: at a distance from the start the name changes from back to ahead.</summary>
/// <param name="Internal">Distance along the line from its start.</param>
/// <param name="Back">Name reached there; null where the file gives none.</param>
/// <param name="Ahead">Name that counts on from there.</param>
public sealed record StationEquation(double Internal, double? Back, double Ahead);

/// <summary>
/// Names of stations along a line. Work is done in distances from the start; a name may stand for two places, or for none.
/// </summary>
/// <param name="Start">The name at the start.</param>
/// <param name="Equations">In order of distance.</param>
public sealed record Stationing(double Start, ImmutableArray<StationEquation> Equations)
{
    /// <summary>The station's number at a distance from the start; at an equation, the one ahead.</summary>
    public double At(double distance)
    {
        var station = Start + distance;
        foreach (var equation in Equations)
            if (distance >= equation.Internal) station = equation.Ahead + (distance - equation.Internal);
        return station;
    }

    /// <summary>All distances from the start, up to a length, that have a station's number: none, one or several.</summary>
    public ImmutableArray<double> Find(double station, double length)
    {
        var found = ImmutableArray.CreateBuilder<double>();
        double from = 0, name = Start;
        for (var i = 0; i <= Equations.Length; i++)
        {
            var to = i < Equations.Length ? Equations[i].Internal : length;
            var distance = from + station - name;
            // The end of a stretch is named by the next one.
            if (distance >= from && (i < Equations.Length ? distance < to : distance <= to)) found.Add(distance);
            if (i < Equations.Length) (from, name) = (to, Equations[i].Ahead);
        }
        return found.ToImmutable();
    }

    /// <summary>"12+34.56" for feet, "1+234.567" for metres.</summary>
    public static string Text(double station, bool feet)
    {
        var (whole, digits) = feet ? (100m, "00.00") : (1000m, "000.000");
        if (!(Math.Abs(station) < 1e15)) return station.ToString(CultureInfo.InvariantCulture);
        var rounded = Math.Round((decimal)Math.Abs(station), feet ? 2 : 3, MidpointRounding.AwayFromZero);
        var sign = station < 0 && rounded > 0 ? "-" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{sign}{Math.Floor(rounded / whole)}+{(rounded % whole).ToString(digits, CultureInfo.InvariantCulture)}");
    }
}
