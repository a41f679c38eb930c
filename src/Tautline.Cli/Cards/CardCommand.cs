using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Cards;

/// <summary>The cards of one terminal: how its ends are cut, and what slides on it.</summary>
internal static class CardCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var post = new Option<string>("--post") { Description = "The mark of a terminal, such as A12.", HelpName = "MARK", Required = true };
        var toward = new Option<string?>("--toward") { Description = "Of two fabrics at the post the one toward this mark.", HelpName = "MARK" };
        var (top, bottom) = (Edge("top"), Edge("bottom"));
        var command = new Command(
            "card", "The cut card and the stack card of a terminal; with --top and --bottom, read under tension from one picket out to the bar, the cut as it has to be.")
        {
            file, post, toward, top, bottom, built, units, spec, crs,
        };
        rules.AddTo(command);
        command.Validators.Add(r =>
        {
            if ((r.GetResult(top) is null) != (r.GetResult(bottom) is null)) r.AddError("--top and --bottom are read together: give both.");
        });
        command.SetAction(p => (int)CardRun.Run(
            new CardOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                p.GetRequiredValue(post), p.GetValue(toward), p.GetValue(top), p.GetValue(bottom)),
            host));
        return command;
    }

    private static Option<Length?> Edge(string edge) => Flags.Reading($"--{edge}", $"Tape reading along the {edge} edge");
}
