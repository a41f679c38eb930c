using Tautline.Cli.Output;
using Tautline.Cli.Plan;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Profile;

internal static class ProfileRun
{
    public static ExitCode Run(ProfileOptions options, CliHost host) => Planning.Write(
        options.Planning, options.Target, host,
        (planned, paper) => options.Csv ? Csv(planned.Plan!, planned.Units) : ProfileText.Write(planned.Plan!, new PlanWords(planned.Units), paper));

    private static string Csv(Engine.Plans.Plan plan, UnitSystem units)
    {
        var (csv, u) = (new CsvText(), CsvUnits.Of(units));
        csv.Row("line", $"station_{u.Long}", $"ground_{u.Long}", $"fabric_top_{u.Long}", $"fabric_bottom_{u.Long}", $"gap_{u.Short}", "post", $"post_top_{u.Long}");
        for (var line = 0; line < plan.Lines.Count; line++)
            foreach (var row in ProfileTable.Of(plan, line))
            {
                var post = row.Post is { } at ? plan.Lines[line].Posts[at] : null;
                csv.Row(
                    plan.Lines[line].Id, u.InLong(row.Station), u.InLong(row.Ground), Maybe(row.Top, u.InLong), Maybe(row.Bottom, u.InLong),
                    Maybe(row.Gap, u.InShort), post is null ? null : PlanWords.Mark(line, post), Maybe(post?.TopHeight, u.InLong));
            }
        return csv.ToString();
    }

    private static double? Maybe(Length? length, Func<Length, double> unit) => length is { } one ? unit(one) : null;
}
