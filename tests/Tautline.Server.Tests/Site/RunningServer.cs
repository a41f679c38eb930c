using System.Diagnostics;
using System.Reflection;

namespace Tautline.Server.Tests.Site;

/// <summary>The server as a process of its own.</summary>
internal sealed class RunningServer : IAsyncDisposable
{
    private readonly Process process;
    private readonly List<string> said = [];

    private RunningServer(Process process, string address) => (this.process, Address) = (process, address);

    public string Address { get; }

    public int Id => process.Id;

    /// <summary>Everything it wrote.</summary>
    public string Said
    {
        get
        {
            lock (said) return string.Join('\n', said);
        }
    }

    public static string Checkout
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "Tautline.slnx"))) folder = folder.Parent!;
            return folder.FullName;
        }
    }

    public static string Program
        => Path.Combine(Checkout, "src/Tautline.Server/bin", typeof(RunningServer).Assembly.GetCustomAttribute<AssemblyConfigurationAttribute>()!.Configuration, "net10.0/Tautline.Server");

    public static Task<RunningServer> StartAsync(string store, params string[] more) => StartAsync([], store, more);

    /// <summary>On a disk that has room for files up to a size only, as far as the server can tell.</summary>
    /// <param name="kilobytes">The largest a file of it may become.</param>
    public static Task<RunningServer> StartCrampedAsync(string store, int kilobytes)
        // The runtime's own map of its code is a file too, and a large one, unless it is told otherwise.
        => StartAsync(["-c", $"export DOTNET_EnableWriteXorExecute=0; trap '' XFSZ; ulimit -f {kilobytes}; exec \"$0\" \"$@\"", Program], store, []);

    private static async Task<RunningServer> StartAsync(string[] shell, string store, string[] more)
    {
        var address = $"http://localhost:{Postgres.FreePort()}";
        var start = new ProcessStartInfo(shell.Length > 0 ? "bash" : Program, [.. shell, "--urls", address, "--store", store, "--requests", "1000000", "--sign-ins", "1000000", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var server = new RunningServer(Process.Start(start)!, address);
        var open = new TaskCompletionSource();
        void Hear(string? line)
        {
            if (line is null) return;
            lock (server.said) server.said.Add(line);
            if (line.Contains("is open at", StringComparison.Ordinal)) open.TrySetResult();
        }
        server.process.OutputDataReceived += (_, e) => Hear(e.Data);
        server.process.ErrorDataReceived += (_, e) => Hear(e.Data);
        server.process.Exited += (_, _) => open.TrySetException(new InvalidOperationException($"the server ended: {server.Said}"));
        server.process.EnableRaisingEvents = true;
        server.process.BeginOutputReadLine();
        server.process.BeginErrorReadLine();
        await open.Task.WaitAsync(TimeSpan.FromSeconds(60));
        return server;
    }

    /// <summary>Runs it for a command that ends by itself.</summary>
    public static async Task<(int Code, string Output, string Error)> RunAsync(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await error);
    }

    /// <summary>As a power cut ends it.</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) await KillAsync();
        process.Dispose();
    }
}
