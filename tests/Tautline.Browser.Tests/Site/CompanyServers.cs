namespace Tautline.Browser.Tests.Site;

/// <summary>
/// Where companies sign in: two servers on one PostgreSQL behind a balancer, so that nothing may rest on one process's memory; where there is no PostgreSQL, or TAUTLINE_ONE=1 asks for it,
/// one server on SQLite. On 'localhost': a passkey is made for a name, not for a number.
/// </summary>
internal sealed class CompanyServers : IAsyncDisposable
{
    private static readonly string[] settings = ["--accounts", "true", "--sign-up", "open", "--sign-ins", "10000", "--requests", "1000000"];

    private readonly List<IAsyncDisposable> started = [];

    public string Address { get; private set; } = "";

    public static async Task<CompanyServers> StartAsync()
    {
        var made = new CompanyServers();
        if (Environment.GetEnvironmentVariable("TAUTLINE_ONE") == "1" || await Postgres.StartAsync() is not { } postgres)
        {
            made.Address = (await made.ServeAsync([])).Address;
            return made;
        }

        made.started.Add(postgres);
        string database = await postgres.NewDatabaseAsync();
        string[] addresses = [(await made.ServeAsync(["--store", database])).Address, (await made.ServeAsync(["--store", database])).Address];
        var balancer = await RoundRobin.StartAsync(addresses);
        made.started.Add(balancer);
        made.Address = balancer.Address;
        return made;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (IAsyncDisposable part in started.AsEnumerable().Reverse()) await part.DisposeAsync();
    }

    private async Task<ServedApp> ServeAsync(string[] store)
    {
        ServedApp server = await ServedApp.StartAsync($"http://localhost:{Postgres.FreePort()}", [.. settings, .. store]);
        started.Add(server);
        return server;
    }
}
