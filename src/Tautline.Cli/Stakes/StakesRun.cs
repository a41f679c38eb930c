using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;

namespace Tautline.Cli.Stakes;

internal static class StakesRun
{
    /// <summary>A thousandth of a metre or foot; finer than anyone sets a stake.</summary>
    private const int Digits = 3;

    public static ExitCode Run(StakesOptions options, CliHost host)
    {
        StakeList? stakes = null;
        var exit = Planning.Write(options.Planning, options.Target, host, (planned, _) => Csv(stakes = StakeLister.Of(planned.Plan!, planned.Units), options.Header));
        if (stakes is not null)
            host.Error.Write($"{stakes.Stakes.Count} stakes in {Where(stakes)}; compare two of them with known marks before driving any.\n{Cautions.Digging}\n");
        return exit;
    }

    private static string Where(StakeList stakes)
        => stakes.System is { } system ? $"{stakes.Unit.Name()} of {system}" : $"{stakes.Unit.Name()} east and north of the job's own origin";

    private static string Csv(StakeList stakes, bool header)
    {
        var csv = new CsvText();
        var unit = stakes.Unit switch { LinearUnit.Foot => "ft", LinearUnit.SurveyFoot => "ftus", _ => "m" };
        if (header) csv.Row("point", $"northing_{unit}", $"easting_{unit}", $"elevation_{unit}", "description", $"top_over_stake_{unit}");
        foreach (var s in stakes.Stakes)
            csv.Row(s.Point, Rounded(s.Northing), Rounded(s.Easting), s.Elevation is { } height ? Rounded(height) : null, s.Description, Rounded(s.Top));
        return csv.ToString();
    }

    private static double Rounded(double value) => Math.Round(value, Digits);
}
