using System.CommandLine;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Schema;

internal static class SchemaCommand
{
    public static Command Define(CliHost host)
    {
        var command = new Command("schema", "Prints the JSON Schema of job files.");
        command.SetAction(_ => (int)Run(host));
        return command;
    }

    private static ExitCode Run(CliHost host)
    {
        using var schema = new StreamReader(typeof(SchemaCommand).Assembly.GetManifestResourceStream("job.schema.json")!);
        host.Output.Write(schema.ReadToEnd());
        return ExitCode.Fine;
    }
}
