using System.IO.Compression;
using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Tautline.Store.Backups;

/// <summary>Passkeys lie in the databases as JSON, with bytes written in hexadecimal by the one and in base 64 by the other: they go through their own type.</summary>
internal static class PasskeyRows
{
    public static bool Are(ITable table) => table.EntityTypeMappings.Any(m => m.TypeBase.ClrType == typeof(IdentityUserPasskey<Guid>));

    public static async Task<long> WriteAsync(StoreContext store, Stream to, CancellationToken cancel)
    {
        long rows = 0;
        await foreach (var key in store.Set<IdentityUserPasskey<Guid>>().AsNoTracking().OrderBy(k => k.CredentialId).AsAsyncEnumerable().WithCancellation(cancel))
        {
            await JsonSerializer.SerializeAsync(to, key, cancellationToken: cancel);
            to.WriteByte((byte)'\n');
            rows++;
        }
        return rows;
    }

    public static async Task<long> ReadAsync(StoreContext store, ZipArchiveEntry from, CancellationToken cancel)
    {
        using var lines = new StreamReader(await from.OpenAsync(cancel));
        long rows = 0;
        for (; await lines.ReadLineAsync(cancel) is { } line; rows++)
        {
            using var row = StoreBackup.Parsed(line, from.Name, rows + 1);
            store.Add(row.Deserialize<IdentityUserPasskey<Guid>>()!);
        }
        await store.SaveChangesAsync(cancel);
        store.ChangeTracker.Clear();
        return rows;
    }
}
