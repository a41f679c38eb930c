using Npgsql;

[assembly: AssemblyFixture(typeof(Tautline.Server.Tests.Site.Sites))]

namespace Tautline.Server.Tests.Site;

/// <summary>One process on SQLite, and two on one PostgreSQL behind a balancer: every test of the API runs on both.</summary>
public sealed class Sites : IAsyncLifetime
{
    public const string One = "one process on SQLite";
    public const string Two = "two processes on PostgreSQL";

    private readonly string folder = Directory.CreateTempSubdirectory("tautline-sites-").FullName;
    private readonly List<IAsyncDisposable> started = [];
    private string? two;
    private int made;

    public static TheoryData<string> Both => [One, Two];

    internal Postgres? Postgres { get; private set; }

    internal string SqliteAddress { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        SqliteAddress = (await StartAsync(NewFile())).Address;
        if ((Postgres = await Postgres.StartAsync()) is null) return;
        var database = await Postgres.NewDatabaseAsync();
        // At once, so that both find the database without tables.
        var servers = await Task.WhenAll(StartAsync(database), StartAsync(database));
        var balancer = await RoundRobin.StartAsync([.. servers.Select(s => s.Address)]);
        started.Add(balancer);
        two = balancer.Address;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var part in started.AsEnumerable().Reverse()) await part.DisposeAsync();
        if (Postgres is not null) await Postgres.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A browser that nobody signed in with.</summary>
    internal Browser Open(string site)
    {
        if (site == One) return new(SqliteAddress);
        Assert.SkipWhen(two is null, "no PostgreSQL: Debian's package 'postgresql' has it");
        return new(two);
    }

    /// <summary>An empty store for a server of a test's own.</summary>
    internal async Task<string> NewStoreAsync(string site)
    {
        if (site == One) return NewFile();
        Assert.SkipWhen(Postgres is null, "no PostgreSQL: Debian's package 'postgresql' has it");
        return await Postgres.NewDatabaseAsync();
    }

    internal string NewFile() => Path.Combine(folder, $"{Interlocked.Increment(ref made)}.db");

    private async Task<RunningServer> StartAsync(string store)
    {
        var server = await RunningServer.StartAsync(store, "--accounts", "true", "--sign-up", "open");
        lock (started) started.Add(server);
        return server;
    }
}
