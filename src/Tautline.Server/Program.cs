using Tautline.Server.Commands;
using Tautline.Server.Hosting;

if (await BackupCommands.RunAsync(args, Console.Out, Console.Error) is { } done) return done;
try
{
    await using WebApplication app = WebHost.Build(args);
    return await WebHost.RunAsync(app, Console.Out, Console.Error);
}
catch (SettingsException fault)
{
    await Console.Error.WriteLineAsync($"error: {fault.Message}\nhint: {fault.Hint}");
    return 2;
}
