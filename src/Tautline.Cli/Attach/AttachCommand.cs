using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Attach;

internal static class AttachCommand
{
    private static readonly Length usual = new(10);

    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var ground = new Argument<string>("GROUND") { Description = "Survey points (.csv, .txt, .asc), a surface in LandXML, a grid as Esri ASCII or GeoTIFF." };
        var width = new Option<Length?>("--width") { Description = "How far to each side of the lines the ground is kept, such as 30ft or 10m; 10 m otherwise.", HelpName = "LENGTH", CustomParser = ReadWidth };
        var output = new Option<string?>("--out") { Description = "Write the job with its ground to this file instead of the screen.", HelpName = "FILE" };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var (units, spec, outline) = (Flags.Units(), Flags.Spec(), Flags.Crs("--outline-crs"));
        var answers = new GroundFlags();
        var command = new Command("attach", "Lays measured ground under the lines of a job, which then keeps what lies near them.") { file, ground, width, output, force, units, spec, outline };
        answers.AddTo(command);
        command.SetAction(p => (int)AttachRun.Run(
            new AttachOptions(
                p.GetRequiredValue(file), new OutlineChoices(p.GetValue(spec), p.GetValue(outline)), p.GetValue(units), p.GetRequiredValue(ground),
                answers.Answers(p, p.GetRequiredValue(ground)), p.GetValue(width) ?? usual, new Target(p.GetValue(output), p.GetValue(force))),
            answers, host));
        return command;
    }

    private static Length? ReadWidth(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var width = LengthText.Parse(text, LengthUnit.Foot);
        if (width is { Ok: true, Value.Metres: > 0 and <= 10_000 }) return width.Value;
        result.AddError($"--width cannot be '{text}': write a length such as 30ft or 10m, at most 10 km.");
        return null;
    }
}
