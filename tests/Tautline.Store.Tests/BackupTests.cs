using System.IO.Compression;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Tautline.Store.Backups;
using Tautline.Store.Rows;

namespace Tautline.Store.Tests;

public sealed class BackupTests(Databases databases)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string, string> Ways => new()
    {
        { Databases.Sqlite, Databases.Sqlite }, { Databases.Sqlite, Databases.Postgres }, { Databases.Postgres, Databases.Sqlite }, { Databases.Postgres, Databases.Postgres },
    };

    [Theory, MemberData(nameof(Ways))]
    public async Task ABackupGoesBackIntoEitherDatabase(string from, string to)
    {
        var place = await databases.EmptyAsync(from);
        var us = await Databases.CompanyAsync(place, "us");
        await Databases.CompanyAsync(place, "them");
        await TenancyTests.FillAsync(place, us);
        await using (var store = place.Open(us.CompanyId))
        {
            var person = await store.Users.SingleAsync(p => p.Id == us.PersonId, Cancel);
            person.LockoutEnd = new DateTimeOffset(2027, 3, 4, 5, 6, 7, TimeSpan.Zero);
            store.Add(new IdentityUserPasskey<Guid> { UserId = us.PersonId, CredentialId = [9, 8, 7], Data = new() { PublicKey = [1, 2], Name = "phone", AttestationObject = [3], ClientDataJson = [4], CreatedAt = person.LockoutEnd.Value } });
            store.Add(new IdentityUserClaim<Guid> { UserId = us.PersonId, ClaimType = "a", ClaimValue = "b" });
            await store.SaveChangesAsync(Cancel);
        }
        var backup = await BackupAsync(place);
        var other = await databases.PlaceAsync(to);
        await using (var store = other.Open()) Assert.Equal(1, (await StoreBackup.RestoreAsync(store, new MemoryStream(backup), Cancel))["Jobs"]);
        // The same rows in the same words: compared as the next backup writes them.
        Assert.Equal(Lines(backup), Lines(await BackupAsync(other)));
        await using var read = other.Open(us.CompanyId);
        Assert.Equal([0, 1, 2, 255], (await read.Attachments.SingleAsync(Cancel)).Bytes);
        Assert.Equal("{\"é\":\"ü\"}", Encoding.UTF8.GetString((await read.Items.SingleAsync(i => i.Number == 1, Cancel)).Body));
        Assert.Equal("phone", (await read.Set<IdentityUserPasskey<Guid>>().SingleAsync(Cancel)).Data.Name);
        // What the database counts goes on after what was restored.
        read.Add(new IdentityUserClaim<Guid> { UserId = us.PersonId, ClaimType = "c", ClaimValue = "d" });
        await read.SaveChangesAsync(Cancel);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task AStoreWithSomethingInItIsNotRestoredInto(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        await Databases.CompanyAsync(place, "us");
        var backup = await BackupAsync(place);
        await using var store = place.Open();
        var fault = await Assert.ThrowsAsync<BackupException>(() => StoreBackup.RestoreAsync(store, new MemoryStream(backup), Cancel));
        Assert.Equal("the store has something in it already. Restore into a new one: name a file that is not there yet, or an empty database", fault.Message);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task ADamagedBackupLeavesNothingBehind(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await TenancyTests.FillAsync(place, us);
        var backup = await BackupAsync(place);
        foreach (var (name, spoil, words) in new (string, Func<byte[], byte[]>, string)[]
        {
            ("cut off", b => b[..(b.Length / 2)], "no ZIP file, or was cut off"),
            ("no backup", _ => Encoding.UTF8.GetBytes("hello"), "no ZIP file, or was cut off"),
            ("a row less", b => Changed(b, "Items.jsonl", t => t[(t.IndexOf('\n', StringComparison.Ordinal) + 1)..]), "'Items.jsonl' has 1 rows and should have 2"),
            ("no JSON", b => Changed(b, "Items.jsonl", t => t.Replace("{", "[", StringComparison.Ordinal)), "'Items.jsonl' line 1 is no JSON"),
            ("a table less", b => Changed(b, "Items.jsonl", _ => null), "lacks 'Items.jsonl'"),
        })
        {
            var other = await databases.PlaceAsync(kind);
            await using (var store = other.Open())
            {
                var fault = await Assert.ThrowsAsync<BackupException>(() => StoreBackup.RestoreAsync(store, new MemoryStream(spoil(backup)), Cancel));
                Assert.True(fault.Message.Contains(words, StringComparison.Ordinal), $"{name}: {fault.Message}");
            }
            await using var after = other.Open();
            await after.Database.MigrateAsync(Cancel);
            Assert.False(await Doors.AnyCompanyAsync(after, Cancel), name);
        }
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task TheModelIsWhatTheMigrationsMake(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        await using var store = place.Open();
        Assert.False(store.Database.HasPendingModelChanges());
        Assert.Empty(await store.Database.GetPendingMigrationsAsync(Cancel));
    }

    [Fact]
    public async Task SqliteKeepsALogBesideItsFileAndWaitsForTheDisk()
    {
        var place = await databases.EmptyAsync(Databases.Sqlite);
        await using var store = place.Open();
        Assert.Equal("wal", (await store.Database.SqlQueryRaw<string>("PRAGMA journal_mode").ToListAsync(Cancel)).Single());
        Assert.Equal(2, (await store.Database.SqlQueryRaw<int>("PRAGMA synchronous").ToListAsync(Cancel)).Single());
        Assert.Equal(1, (await store.Database.SqlQueryRaw<int>("PRAGMA foreign_keys").ToListAsync(Cancel)).Single());
    }

    private static async Task<byte[]> BackupAsync(StorePlace place)
    {
        using var stream = new MemoryStream();
        await using var store = place.Open();
        await StoreBackup.WriteAsync(store, stream, Cancel);
        return stream.ToArray();
    }

    private static SortedDictionary<string, string[]> Lines(byte[] backup)
    {
        using var zip = new ZipArchive(new MemoryStream(backup));
        return new(zip.Entries.Where(e => e.Name.EndsWith(".jsonl", StringComparison.Ordinal)).ToDictionary(e => e.Name, e => Text(e).Split('\n').Order(StringComparer.Ordinal).ToArray()), StringComparer.Ordinal);
    }

    private static byte[] Changed(byte[] backup, string file, Func<string, string?> change)
    {
        using var stream = new MemoryStream();
        using (var to = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        using (var from = new ZipArchive(new MemoryStream(backup)))
        {
            foreach (var entry in from.Entries)
            {
                if ((entry.Name == file ? change(Text(entry)) : Text(entry)) is not { } text) continue;
                using var writer = new StreamWriter(to.CreateEntry(entry.Name).Open());
                writer.Write(text);
            }
        }
        return stream.ToArray();
    }

    private static string Text(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open());
        return reader.ReadToEnd();
    }
}
