using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Tautline.Store;

namespace Tautline.Server.Hosting;

/// <summary>The store is brought to what this program knows before the first request.</summary>
internal static class StoreAtStart
{
    public static async Task<bool> ReadyAsync(StorePlace place, TextWriter error, CancellationToken cancel = default)
    {
        try
        {
            if (!place.Postgres && Path.GetDirectoryName(Path.GetFullPath(place.Connection)) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
            if (!place.Postgres) OnlyMine(Path.GetFullPath(place.Connection));
            await using var store = place.Open();
            await store.Database.MigrateAsync(cancel);
            return true;
        }
        catch (Exception fault) when (fault is DbException or IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            var what = place.Postgres ? "the PostgreSQL database" : $"'{place.Connection}'";
            await error.WriteLineAsync($"error: Tautline cannot open its store, {what}: {(fault.InnerException ?? fault).Message}\nhint: Name a file in a folder that may be written, --store FILE, or a database, --store \"Host=...;Database=...;Username=...;Password=...\"");
            return false;
        }
    }

    /// <summary>Passwords' hashes, addresses and the cookies' keys lie in it: other users of this machine have no business there. What the database writes beside it gets the same mode.</summary>
    private static void OnlyMine(string file)
    {
        if (OperatingSystem.IsWindows()) return;
        using (new FileStream(file, new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.ReadWrite | FileShare.Delete, UnixCreateMode = OwnerOnly })) { }
        if (File.GetUnixFileMode(file) != OwnerOnly) File.SetUnixFileMode(file, OwnerOnly);
    }

    public const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
}
