using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Tautline;

/// <summary>
/// A PostgreSQL of our own for one test run: a cluster in a folder that goes away, on a free port of this machine, stopped at the end. Debian's package 'postgresql' has the programs;
/// without them the tests that need it are skipped.
/// </summary>
public sealed class Postgres : IAsyncDisposable
{
    private const string Packages = "/usr/lib/postgresql";

    private readonly string folder = Directory.CreateTempSubdirectory("tautline-pg-").FullName;
    private readonly string programs;
    private int made;

    private Postgres(string programs) => this.programs = programs;

    public int Port { get; } = FreePort();

    public static bool IsHere => Programs() is not null;

    /// <summary>Nothing where the programs are not on this machine.</summary>
    public static async Task<Postgres?> StartAsync()
    {
        if (Programs() is not { } programs) return null;
        var made = new Postgres(programs);
        // It refuses to run as root.
        if (Environment.UserName == "root") await RunAsync("chown", ["-R", "postgres", made.folder]);
        await made.AsOwnerAsync("initdb", "-D", $"{made.folder}/data", "-U", "tautline", "-A", "trust", "-E", "UTF8", "--no-locale", "--no-sync");
        await made.UpAsync();
        return made;
    }

    public Task UpAsync() => AsOwnerAsync(
        "pg_ctl", "-D", $"{folder}/data", "-w", "-l", $"{folder}/log", "-o", string.Create(CultureInfo.InvariantCulture, $"-p {Port} -k {folder} -c listen_addresses=127.0.0.1 -c max_connections=200"), "start");

    /// <param name="mode">'fast' ends sessions in order, 'immediate' as if the machine had lost its power.</param>
    public Task DownAsync(string mode = "fast") => AsOwnerAsync("pg_ctl", "-D", $"{folder}/data", "-w", "-m", mode, "stop");

    /// <summary>A new, empty database.</summary>
    /// <returns>Its connection string.</returns>
    public async Task<string> NewDatabaseAsync()
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"t{Interlocked.Increment(ref made)}");
        await using var connection = new NpgsqlConnection(Of("postgres"));
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand($"CREATE DATABASE {name}", connection);
        await command.ExecuteNonQueryAsync();
        return Of(name);
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        await DownAsync("immediate");
        Directory.Delete(folder, recursive: true);
    }

    private string Of(string database) => string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={Port};Database={database};Username=tautline;Maximum Pool Size=40;Timeout=10");

    private Task AsOwnerAsync(string program, params string[] arguments)
        => Environment.UserName == "root" ? RunAsync("setpriv", ["--reuid=postgres", "--regid=postgres", "--clear-groups", $"{programs}/{program}", .. arguments]) : RunAsync($"{programs}/{program}", arguments);

    private static async Task RunAsync(string program, string[] arguments)
    {
        // Its output goes nowhere: the server it leaves behind would hold the pipe open.
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "exec \"$@\" >/dev/null 2>&1 </dev/null", "sh", program, .. arguments]) { WorkingDirectory = "/" })!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}");
    }

    private static string? Programs() => !Directory.Exists(Packages) ? null
        : Directory.GetDirectories(Packages).Select(d => Path.Combine(d, "bin")).Where(d => File.Exists(Path.Combine(d, "initdb"))).Order(StringComparer.Ordinal).LastOrDefault();

    /// <summary>A port of this machine nobody listens on just now.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
