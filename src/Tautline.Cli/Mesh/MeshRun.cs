using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Mesh;

internal static class MeshRun
{
    public static ExitCode Run(MeshOptions options, CliHost host)
    {
        var planned = Planning.Run(options.Planning, host);
        if (planned.Exit != ExitCode.Fine)
        {
            Messages.Show(host, planned.Findings);
            return planned.Exit;
        }
        var specs = planned.Plan!.Basis.Specs;
        var at = options.For is null && specs.Count == 1 ? 0 : specs.ToList().FindIndex(s => s.Spec.Id.Value == options.For);
        if (at < 0)
        {
            Messages.Error(host, options.For is null ? "The job has several specs." : $"The job has no spec '{options.For}'.", $"Name one with --fabric: {string.Join(", ", specs.Select(s => s.Spec.Id.Value))}.");
            return ExitCode.Problems;
        }
        var reading = HangCards.Mesh(planned.Plan, at, options.Measured);
        Messages.Show(host, [.. reading.Problems.Select(p => new Finding(p.Severity, p.Code.ToString(), p.Place.Path, ProblemText.Message(p, planned.Units), ProblemText.Hint(p, planned.Units)))]);
        if (reading.Value is not { } mesh) return ExitCode.Problems;
        var paper = Paper.For(host);
        foreach (var sentence in HangWords.Mesh(mesh, planned.Units)) paper.Line(sentence);
        paper.Heading("Caution");
        paper.Line(Cautions.Tension);
        host.Output.Write(paper.ToString());
        return ExitCode.Fine;
    }
}
