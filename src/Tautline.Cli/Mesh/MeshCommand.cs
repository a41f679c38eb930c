using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Mesh;

/// <summary>What a measured mesh says about how hard the fabric is pulled.</summary>
internal static class MeshCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, units, spec, crs) = (Flags.Rules(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var of = new Option<string?>("--fabric") { Description = "The spec whose fabric was measured, where the job has several.", HelpName = "SPEC" };
        var (ten, over, squeeze) = (
            Flags.Reading("--ten", "Over ten pickets along the fabric"), Flags.Reading("--over", "The height over which --diamonds were counted"),
            Flags.Reading("--squeeze", "Gap left at the interlock when two neighbouring wires are pinched together"));
        var diamonds = new Option<double?>("--diamonds") { Description = "Counted plumb, selvages left out; halves count.", HelpName = "N" };
        var command = new Command("mesh", "Whether fabric is stretched too far or hangs slack, from what was measured on it.")
        {
            file, ten, diamonds, over, squeeze, of, units, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)MeshRun.Run(
            new MeshOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs))),
                p.GetValue(of), new MeshMeasured(p.GetValue(ten), p.GetValue(diamonds), p.GetValue(over), p.GetValue(squeeze))),
            host));
        return command;
    }
}
