using System.CommandLine;
using Tautline.Cli.Input;

namespace Tautline.Cli;

/// <summary>The flags that name a rule set: from a file, or one of the built-in ones.</summary>
internal sealed record RulesFlags(Option<string?> File, Option<string?> Name)
{
    public void AddTo(Command command)
    {
        command.Options.Add(File);
        command.Options.Add(Name);
        command.Validators.Add(r =>
        {
            if (r.GetResult(File) is not null && r.GetResult(Name) is not null) r.AddError("--rules and --rule-set exclude each other.");
        });
    }

    public RulesChoice Choice(ParseResult parsed) => new(parsed.GetValue(File), parsed.GetValue(Name));
}
