using Tautline.Cli;
using Tautline.Cli.Terminal;

using var cancel = new CancellationTokenSource();
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    cancel.Cancel();
};
using var output = Streams.Utf8(Console.OpenStandardOutput());
using var error = Streams.Utf8(Console.OpenStandardError());
return (int)CliApp.Run(args, CliHost.OfProcess(output, error, cancel.Token));
