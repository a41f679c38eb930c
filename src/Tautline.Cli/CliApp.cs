using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Tautline.Cli.Attach;
using Tautline.Cli.Cards;
using Tautline.Cli.Catalog;
using Tautline.Cli.Check;
using Tautline.Cli.Compare;
using Tautline.Cli.Field;
using Tautline.Cli.Hang;
using Tautline.Cli.Mesh;
using Tautline.Cli.Papers;
using Tautline.Cli.Plan;
using Tautline.Cli.Profile;
using Tautline.Cli.Schema;
using Tautline.Cli.Stakes;
using Tautline.Cli.Terminal;
using Tautline.Cli.Why;

namespace Tautline.Cli;

/// <summary>The program: reads the command line, runs one command, and turns whatever comes of it into an exit code.</summary>
public static class CliApp
{
    public static ExitCode Run(string[] args, CliHost host)
    {
        try
        {
            var parsed = Root(host).Parse(args);
            return parsed.Errors.Count > 0 ? Refuse(parsed, host) : (ExitCode)parsed.Invoke(Configuration(host));
        }
        catch (OperationCanceledException)
        {
            host.Error.Write("cancelled\n");
            return ExitCode.Cancelled;
        }
        catch (Exception fault)
        {
            Messages.Error(host, $"A fault inside the program: {fault}", "This is not your doing. Keep the file: with it the fault can be found.");
            return ExitCode.Fault;
        }
    }

    private static RootCommand Root(CliHost host)
    {
        var root = new RootCommand("Tautline plans chain-link fence: posts, fabric and everything to buy, and the reason for every number.")
        {
            PlanCommand.Define(host), WhyCommand.Define(host), CheckCommand.Define(host), CompareCommand.Define(host), AttachCommand.Define(host), HangCommand.Define(host), PapersCommand.Define(host), CardCommand.Define(host), FieldCommand.Define(host), MeshCommand.Define(host), ProfileCommand.Define(host), StakesCommand.Define(host),
            CatalogCommand.Define(host), SchemaCommand.Define(host),
        };
        foreach (var help in root.Options.OfType<HelpOption>()) help.Action = new HelpWithExitCodes((HelpAction)help.Action!);
        return root;
    }

    private static InvocationConfiguration Configuration(CliHost host)
        => new() { Output = host.Output, Error = host.Error, EnableDefaultExceptionHandler = false };

    private static ExitCode Refuse(ParseResult parsed, CliHost host)
    {
        var command = parsed.CommandResult.Command;
        var name = command is RootCommand ? "tautline" : $"tautline {string.Join(' ', Named(parsed.CommandResult))}";
        var messages = parsed.Errors.Select(e => e.Message).Distinct().ToList();
        foreach (var message in messages.SkipLast(1)) Messages.Error(host, message);
        var commands = command.Subcommands.Count > 0 ? $" Commands: {string.Join(", ", command.Subcommands.Select(c => c.Name))}." : "";
        Messages.Error(host, messages[^1], $"'{name} --help' shows what belongs here.{commands}");
        return ExitCode.Usage;
    }

    /// <summary>A command by its name and those it is in, from the outside in.</summary>
    private static IEnumerable<string> Named(CommandResult result)
        => result.Parent is CommandResult { Command: not RootCommand } around ? [.. Named(around), result.Command.Name] : [result.Command.Name];
}
