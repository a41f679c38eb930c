using Tautline.Server.Hosting;

await using WebApplication app = WebHost.Build(args);
return await WebHost.RunAsync(app, Console.Out, Console.Error);
