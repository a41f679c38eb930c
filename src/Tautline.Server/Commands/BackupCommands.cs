using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Backups;

namespace Tautline.Server.Commands;

/// <summary>'backup FILE' and 'restore FILE', in place of serving.</summary>
internal static class BackupCommands
{
    public static async Task<int?> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        if (args.Length == 0 || args[0] is not ("backup" or "restore")) return null;
        if (args.Length < 2 || args[1].StartsWith("--", StringComparison.Ordinal))
        {
            await error.WriteLineAsync($"error: '{args[0]}' needs a file\nhint: {args[0]} tautline-backup.zip, with --store where the store is not in its usual place");
            return 2;
        }
        try
        {
            var place = ServerSettings.Of(new ConfigurationBuilder().AddEnvironmentVariables("TAUTLINE_").AddCommandLine(args[2..]).Build()).Store;
            return args[0] == "backup" ? await BackupAsync(place, args[1], output, error) : await RestoreAsync(place, args[1], output, error);
        }
        catch (Exception fault) when (fault is BackupException or SettingsException or IOException or UnauthorizedAccessException or System.Data.Common.DbException or InvalidDataException or System.Text.Json.JsonException)
        {
            await error.WriteLineAsync($"error: {fault.Message}");
            return 1;
        }
    }

    private static async Task<int> BackupAsync(StorePlace place, string file, TextWriter output, TextWriter error)
    {
        if (!place.Postgres && !File.Exists(place.Connection))
        {
            await error.WriteLineAsync($"error: there is no store at '{place.Connection}'\nhint: Name it: --store FILE");
            return 1;
        }
        // Under another name until it is whole, so that a backup that failed is never taken for one.
        var part = file + ".part";
        IReadOnlyDictionary<string, long> rows;
        await using (var stream = Private(part))
        {
            await using var store = place.Open();
            rows = await StoreBackup.WriteAsync(store, stream);
            stream.Flush(flushToDisk: true);
        }
        File.Move(part, file, overwrite: true);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"Backed up {rows["Jobs"]} jobs with {rows["Items"]} items and {rows["Attachments"]} photos to {file}, {new FileInfo(file).Length:N0} bytes."));
        return 0;
    }

    // It has all that the store has.
    private static FileStream Private(string file)
    {
        File.Delete(file);
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = StoreAtStart.OwnerOnly;
        return new(file, options);
    }

    private static async Task<int> RestoreAsync(StorePlace place, string file, TextWriter output, TextWriter error)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read);
        if (!await StoreAtStart.ReadyAsync(place, error)) return 1;
        await using var store = place.Open();
        var rows = await StoreBackup.RestoreAsync(store, stream);
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"Restored {rows["Jobs"]} jobs with {rows["Items"]} items and {rows["Attachments"]} photos. Everybody signs in once more."));
        return 0;
    }
}
