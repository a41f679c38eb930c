using Microsoft.EntityFrameworkCore;
using Tautline.Store.People;
using Tautline.Store.Rows;

[assembly: AssemblyFixture(typeof(Tautline.Store.Tests.Databases))]

namespace Tautline.Store.Tests;

/// <summary>Empty stores of both kinds. Every test of the store runs on each.</summary>
public sealed class Databases : IAsyncLifetime
{
    public const string Sqlite = "SQLite";
    public const string Postgres = "PostgreSQL";

    private readonly string folder = Directory.CreateTempSubdirectory("tautline-store-").FullName;
    private Tautline.Postgres? postgres;
    private int made;

    public static TheoryData<string> Both => [Sqlite, Postgres];

    public async ValueTask InitializeAsync() => postgres = await Tautline.Postgres.StartAsync();

    public async ValueTask DisposeAsync()
    {
        if (postgres is not null) await postgres.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A store without tables.</summary>
    internal async Task<StorePlace> PlaceAsync(string kind)
    {
        if (kind == Sqlite) return new(false, Path.Combine(folder, $"{Interlocked.Increment(ref made)}.db"));
        Assert.SkipWhen(postgres is null, "no PostgreSQL: Debian's package 'postgresql' has it");
        return new(true, await postgres.NewDatabaseAsync());
    }

    /// <summary>A store with tables and nothing in them.</summary>
    internal async Task<StorePlace> EmptyAsync(string kind)
    {
        var place = await PlaceAsync(kind);
        await using var store = place.Open();
        await store.Database.MigrateAsync(TestContext.Current.CancellationToken);
        return place;
    }

    /// <summary>A company with one owner.</summary>
    internal static async Task<Caller> CompanyAsync(StorePlace place, string name)
    {
        var company = new Company { Name = name, Created = 1 };
        var person = new Person { Name = $"{name}'s owner", UserName = $"{name}@example.com", NormalizedUserName = $"{name}@EXAMPLE.COM".ToUpperInvariant(), Email = $"{name}@example.com" };
        var device = new Device { PersonId = person.Id, Name = "phone", Created = 1, Seen = 1 };
        await using var store = place.Open(company.Id);
        store.AddRange(company, person, new Member { PersonId = person.Id, Role = Role.Owner, Created = 1 }, device);
        await store.SaveChangesAsync(TestContext.Current.CancellationToken);
        return new(company.Id, name, person.Id, person.Name, person.Email, Role.Owner, device.Id, device.Name);
    }
}
