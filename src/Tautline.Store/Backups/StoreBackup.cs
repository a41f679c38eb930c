using System.Data.Common;
using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Tautline.Store.Backups;

/// <summary>A backup that cannot be read, or a store it cannot be put into; the message says what to do.</summary>
public sealed class BackupException(string message) : Exception(message);

/// <summary>
/// The whole store as a ZIP of JSON lines, one file a table, read in one snapshot. It goes back into an empty store of either database. The keys of the cookies stay out: who finds a
/// backup cannot make himself a session, and everybody signs in once more after a restore.
/// </summary>
public static class StoreBackup
{
    public const int Version = 1;

    private const string Manifest = "backup.json";

    /// <returns>Rows by table.</returns>
    public static async Task<IReadOnlyDictionary<string, long>> WriteAsync(StoreContext store, Stream to, CancellationToken cancel = default)
    {
        SortedDictionary<string, long> counts = new(StringComparer.Ordinal);
        // A snapshot in both: what is written meanwhile is in the next backup.
        await using var snapshot = await store.Database.BeginTransactionAsync(
            store is PostgresStore ? System.Data.IsolationLevel.RepeatableRead : System.Data.IsolationLevel.Serializable, cancel);
        using var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var table in Tables(store))
        {
            await using var lines = await zip.CreateEntry($"{table.Name}.jsonl", CompressionLevel.Fastest).OpenAsync(cancel);
            counts[table.Name] = PasskeyRows.Are(table) ? await PasskeyRows.WriteAsync(store, lines, cancel) : await WriteAsync(store, table, lines, cancel);
        }
        await using var head = await zip.CreateEntry(Manifest).OpenAsync(cancel);
        await JsonSerializer.SerializeAsync(head, new BackupHead(Version, await LastMigrationAsync(store, cancel), counts), cancellationToken: cancel);
        return counts;
    }

    /// <summary>All of it or nothing.</summary>
    /// <exception cref="BackupException">The file is damaged or of a later program, or the store is not empty.</exception>
    public static async Task<IReadOnlyDictionary<string, long>> RestoreAsync(StoreContext store, Stream from, CancellationToken cancel = default)
    {
        using var zip = Opened(from);
        var head = await HeadAsync(zip, cancel);
        await store.Database.MigrateAsync(cancel);
        if (await Doors.AnyCompanyAsync(store, cancel) || await store.Users.AnyAsync(cancel))
            throw new BackupException("the store has something in it already. Restore into a new one: name a file that is not there yet, or an empty database");
        await using var all = await store.BeginWriteAsync(cancel);
        SortedDictionary<string, long> counts = new(StringComparer.Ordinal);
        foreach (var table in Tables(store))
        {
            if (!head.Rows.TryGetValue(table.Name, out var expected)) continue;
            var lines = zip.GetEntry($"{table.Name}.jsonl") ?? throw new BackupException($"the backup lacks '{table.Name}.jsonl': it is damaged, take another copy");
            counts[table.Name] = PasskeyRows.Are(table) ? await PasskeyRows.ReadAsync(store, lines, cancel) : await ReadAsync(store, table, lines, cancel);
            if (counts[table.Name] != expected) throw new BackupException($"'{table.Name}.jsonl' has {counts[table.Name]} rows and should have {expected}: the backup is damaged, take another copy");
        }
        await all.CommitAsync(cancel);
        return counts;
    }

    private static ZipArchive Opened(Stream from)
    {
        try
        {
            return new ZipArchive(from, ZipArchiveMode.Read, leaveOpen: true);
        }
        catch (InvalidDataException)
        {
            throw new BackupException("this is no backup of Tautline: it is no ZIP file, or was cut off");
        }
    }

    private static async Task<BackupHead> HeadAsync(ZipArchive zip, CancellationToken cancel)
    {
        var entry = zip.GetEntry(Manifest) ?? throw new BackupException($"this is no backup of Tautline: it lacks '{Manifest}'");
        await using var stream = await entry.OpenAsync(cancel);
        var head = await JsonSerializer.DeserializeAsync<BackupHead>(stream, cancellationToken: cancel);
        if (head is null || head.Version != Version) throw new BackupException($"the backup is of version {head?.Version}, this program reads {Version}: restore it with the program that wrote it or a later one");
        return head;
    }

    // Those that others point to come first.
    private static List<ITable> Tables(StoreContext store)
    {
        var keys = store.Model.FindEntityType(typeof(DataProtectionKey))!.GetTableName();
        List<ITable> left = [.. store.Model.GetRelationalModel().Tables.Where(t => t.Name != keys).OrderBy(t => t.Name, StringComparer.Ordinal)], done = [];
        while (left.Count > 0)
        {
            var next = left.First(t => t.ForeignKeyConstraints.All(k => k.PrincipalTable == t || done.Contains(k.PrincipalTable)));
            left.Remove(next);
            done.Add(next);
        }
        return done;
    }

    private static async Task<long> WriteAsync(StoreContext store, ITable table, Stream to, CancellationToken cancel)
    {
        var columns = table.Columns.OrderBy(c => c.Name, StringComparer.Ordinal).ToList();
        await using var command = Command(store, $"SELECT {string.Join(", ", columns.Select(Quoted))} FROM \"{table.Name}\"");
        await using var reader = await command.ExecuteReaderAsync(cancel);
        long rows = 0;
        for (; await reader.ReadAsync(cancel); rows++)
        {
            await using (var writer = new Utf8JsonWriter(to))
            {
                writer.WriteStartObject();
                for (var i = 0; i < columns.Count; i++)
                {
                    writer.WritePropertyName(columns[i].Name);
                    if (reader.IsDBNull(i)) writer.WriteNullValue();
                    else ColumnValue.Write(writer, reader, i, ColumnValue.TypeOf(columns[i]));
                }
                writer.WriteEndObject();
            }
            to.WriteByte((byte)'\n');
        }
        return rows;
    }

    private static async Task<long> ReadAsync(StoreContext store, ITable table, ZipArchiveEntry from, CancellationToken cancel)
    {
        var columns = table.Columns.OrderBy(c => c.Name, StringComparer.Ordinal).ToList();
        var postgres = store is PostgresStore;
        var places = columns.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"@p{i}"));
        await using var command = Command(store, $"INSERT INTO \"{table.Name}\" ({string.Join(", ", columns.Select(Quoted))}) VALUES ({string.Join(", ", places)})");
        for (var i = 0; i < columns.Count; i++)
        {
            var parameter = command.CreateParameter();
            parameter.ParameterName = string.Create(CultureInfo.InvariantCulture, $"p{i}");
            command.Parameters.Add(parameter);
        }
        using var lines = new StreamReader(await from.OpenAsync(cancel));
        long rows = 0;
        for (; await lines.ReadLineAsync(cancel) is { } line; rows++)
        {
            using var row = Parsed(line, from.Name, rows + 1);
            for (var i = 0; i < columns.Count; i++)
                command.Parameters[i].Value = row.RootElement.TryGetProperty(columns[i].Name, out var value) && value.ValueKind != JsonValueKind.Null ? ColumnValue.Read(value, ColumnValue.TypeOf(columns[i])) : DBNull.Value;
            await command.ExecuteNonQueryAsync(cancel);
        }
        if (postgres) await GoOnCountingAsync(store, table, cancel);
        return rows;
    }

    internal static JsonDocument Parsed(string line, string file, long number)
    {
        try
        {
            return JsonDocument.Parse(line);
        }
        catch (JsonException)
        {
            throw new BackupException($"'{file}' line {number} is no JSON: the backup is damaged, take another copy");
        }
    }

    // Numbers that the database gives out go on after the greatest there is.
    private static async Task GoOnCountingAsync(StoreContext store, ITable table, CancellationToken cancel)
    {
        foreach (var column in table.Columns.Where(c => c.PropertyMappings.Any(m => m.Property.ClrType == typeof(int) && m.Property.ValueGenerated == ValueGenerated.OnAdd)))
        {
            await using var command = Command(store, $"SELECT setval(pg_get_serial_sequence('\"{table.Name}\"', '{column.Name}'), COALESCE(MAX({Quoted(column)}), 1)) FROM \"{table.Name}\"");
            await command.ExecuteNonQueryAsync(cancel);
        }
    }

    private static DbCommand Command(StoreContext store, string sql)
    {
        var command = store.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.Transaction = Microsoft.EntityFrameworkCore.Storage.DbContextTransactionExtensions.GetDbTransaction(store.Database.CurrentTransaction!);
        return command;
    }

    private static string Quoted(IColumn column) => $"\"{column.Name}\"";

    private static async Task<string> LastMigrationAsync(StoreContext store, CancellationToken cancel) => (await store.Database.GetAppliedMigrationsAsync(cancel)).LastOrDefault() ?? "";
}

/// <param name="Migration">Of the database it came from.</param>
/// <param name="Rows">By table.</param>
internal sealed record BackupHead(int Version, string Migration, IReadOnlyDictionary<string, long> Rows);
