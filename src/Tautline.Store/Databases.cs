using System.Data;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace Tautline.Store;

public sealed class SqliteStore(DbContextOptions<SqliteStore> options) : StoreContext(options)
{
    /// <summary>BEGIN IMMEDIATE: SQLite has one writer, and one that began by reading could not become it.</summary>
    public override async Task<IDbContextTransaction> BeginWriteAsync(CancellationToken cancel = default)
    {
        await Database.OpenConnectionAsync(cancel);
        var connection = (SqliteConnection)Database.GetDbConnection();
        return (await Database.UseTransactionAsync(connection.BeginTransaction(deferred: false), cancel))!;
    }
}

public sealed class PostgresStore(DbContextOptions<PostgresStore> options) : StoreContext(options)
{
    public override Task<IDbContextTransaction> BeginWriteAsync(CancellationToken cancel = default) => Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, cancel);
}

/// <summary>Where the store is.</summary>
/// <param name="Postgres">True where <paramref name="Connection"/> is a PostgreSQL connection string; else it is the path of an SQLite file.</param>
public sealed record StorePlace(bool Postgres, string Connection)
{
    /// <summary>'Host=...' is PostgreSQL, anything else the path of a file.</summary>
    public static StorePlace Of(string text) => new(text.Contains("Host=", StringComparison.OrdinalIgnoreCase), text);

    // The accounts' part of the model asks a service provider which schema to make; the third has passkeys.
    private static readonly ServiceProvider schema = new ServiceCollection().Configure<IdentityOptions>(o => o.Stores.SchemaVersion = IdentitySchemaVersions.Version3).BuildServiceProvider();

    private readonly Lazy<DbContextOptions> options = new(() => MakeOptions(Postgres, Connection));

    public DbContextOptions Options => options.Value;

    /// <param name="company">Nothing where none is known yet: then nothing of any is seen.</param>
    public StoreContext Open(Guid? company = null)
    {
        StoreContext store = Options switch
        {
            DbContextOptions<PostgresStore> postgres => new PostgresStore(postgres),
            var sqlite => new SqliteStore((DbContextOptions<SqliteStore>)sqlite),
        };
        store.CompanyId = company;
        return store;
    }

    private static DbContextOptions MakeOptions(bool postgres, string connection) => postgres
        ? new DbContextOptionsBuilder<PostgresStore>().UseApplicationServiceProvider(schema).UseNpgsql(connection).Options
        : new DbContextOptionsBuilder<SqliteStore>().UseApplicationServiceProvider(schema).UseSqlite(SqliteConnectionString(connection)).AddInterceptors(new SqliteSettings()).Options;

    private static string SqliteConnectionString(string file) => new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 30 }.ToString();
}

/// <summary>Each connection: a log beside the file so that readers never wait, and on disk before it is said to be.</summary>
internal sealed class SqliteSettings : Microsoft.EntityFrameworkCore.Diagnostics.DbConnectionInterceptor
{
    private const string Settings = "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=30000;";
    private const string ReadOnlySettings = "PRAGMA busy_timeout=30000;";

    // Asking whether a store exists opens it for reading only: nothing of the file can be changed then.
    private static string For(System.Data.Common.DbConnection connection)
        => new SqliteConnectionStringBuilder(connection.ConnectionString).Mode == SqliteOpenMode.ReadOnly ? ReadOnlySettings : Settings;

    public override void ConnectionOpened(System.Data.Common.DbConnection connection, Microsoft.EntityFrameworkCore.Diagnostics.ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = For(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        System.Data.Common.DbConnection connection, Microsoft.EntityFrameworkCore.Diagnostics.ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = For(connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}

/// <summary>For the tool that writes migrations.</summary>
internal sealed class SqliteForMigrations : IDesignTimeDbContextFactory<SqliteStore>
{
    public SqliteStore CreateDbContext(string[] args) => (SqliteStore)new StorePlace(false, "migrations.db").Open();
}

/// <summary>For the tool that writes migrations.</summary>
internal sealed class PostgresForMigrations : IDesignTimeDbContextFactory<PostgresStore>
{
    public PostgresStore CreateDbContext(string[] args) => (PostgresStore)new StorePlace(true, "Host=localhost").Open();
}
