using System.Security.Cryptography;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <param name="Folder">Made where it is not there.</param>
/// <param name="Zone">Where the work is; nothing for the machine's.</param>
internal sealed record FieldPhotosOptions(string File, string Folder, TimeZoneInfo? Zone);

internal static class FieldPhotosRun
{
    private sealed class Tally
    {
        public int Written { get; set; }

        public int There { get; set; }

        public List<Finding> Faults { get; } = [];
    }

    public static ExitCode Run(FieldPhotosOptions options, CliHost host)
    {
        var reading = Work.Run(host, "reading", () => FieldSource.Read(options.File));
        Messages.Show(host, reading.Findings);
        if (reading.File is not { } file) return reading.Exit;
        if (!file.IsZip || file.Photos.Count == 0)
        {
            Messages.Error(
                host, $"{file.Path}: There are no photos in this file{(file.PhotosNamed.Count > 0 ? $", though its log names {file.PhotosNamed.Count}" : "")}.",
                "The phone makes a ZIP with them where it has any: take that file.");
            return ExitCode.Problems;
        }
        if (!Folder(options.Folder, host)) return ExitCode.Unreadable;
        var tally = Written(file, options, host);
        Messages.Show(host, tally.Faults);
        host.Output.Write($"{PlanWords.Count(tally.Written, "photo")} written to {options.Folder}{(tally.There > 0 ? $", {tally.There} there already" : "")}\n");
        var away = file.PhotosNamed.Except(file.Photos).Count();
        if (away > 0) Messages.Note(host, $"{PlanWords.Count(away, "photo")} named in the log {(away == 1 ? "is" : "are")} not in this file.", "Ask the other phones for theirs.");
        return tally.Faults.Select(f => f.Code switch { "PhotoName" => ExitCode.Usage, "PhotoDamaged" => ExitCode.Problems, _ => ExitCode.Unreadable }).Append(reading.Exit).Max();
    }

    private static Tally Written(FieldFile file, FieldPhotosOptions options, CliHost host)
    {
        var tally = new Tally();
        var names = FieldPhotoNames.Of(file, new FieldClock(options.Zone ?? host.Clock.LocalTimeZone));
        using var progress = new ProgressLine(host);
        tally.Faults.AddRange(FieldSource.Photos(file, (digest, picture) =>
        {
            host.Cancelled.ThrowIfCancellationRequested();
            progress.Show($"photo {tally.Written + tally.There + 1} of {file.Photos.Count}");
            Put(Path.Combine(options.Folder, names[digest]), digest, picture, tally);
        }));
        return tally;
    }

    private static void Put(string path, string digest, byte[] picture, Tally tally)
    {
        try
        {
            if (Path.Exists(path))
            {
                if (Same(path, digest)) tally.There++;
                else tally.Faults.Add(new(Severity.Error, "PhotoName", path, "Another file of this name is there already: it was left as it is.", "Choose another folder."));
                return;
            }
            WholeFile.Write(path, picture, replace: false);
            tally.Written++;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            tally.Faults.Add(new(Severity.Error, "PhotoUnwritten", path, $"The file cannot be written: {e.Message}", "Check the folder and the space on the disk."));
        }
    }

    private static bool Same(string path, string digest)
    {
        if (!File.Exists(path)) return false;
        using var there = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(there)) == digest;
    }

    private static bool Folder(string folder, CliHost host)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Messages.Error(host, $"{folder}: The folder cannot be made: {e.Message}", "Name a folder that is there, or one that can be made.");
            return false;
        }
    }
}
