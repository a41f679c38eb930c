using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>Field files for tests.</summary>
internal static class FieldFiles
{
    public static SharedJob Start { get; } = SharedJob.Begin(FieldSample.Job);

    public static byte[] Sample => File.ReadAllBytes(Samples.Field);

    /// <summary>Entry 1 is written on 2026-10-13 at 14:01 in Greenwich, each later one a minute after.</summary>
    public static LogEntry Entry(string device, long number, string text = "", string kind = LogEntry.Note)
        => new() { Device = device, Sequence = number, Tick = number, At = 1_791_900_000_000 + number * 60_000, Person = device, Kind = kind, Text = text };

    public static byte[] Of(params IReadOnlyList<LogEntry> log) => Of(Start, log);

    public static byte[] Of(SharedJob shared, params IReadOnlyList<LogEntry> log) => ExchangeFile.Write(new(shared.Id, shared, log));

    /// <summary>The sample's job with a gate of another opening, by one device.</summary>
    public static SharedJob Opening(string device, double feet)
        => Start.Record(FieldSample.Job with { Gates = [FieldSample.Job.Gates[0] with { Opening = Length.FromFeet(feet) }] }, new(device, 1), 1000, device);

    public static Job Other { get; } = FieldSample.Job with { Id = new("elm-lane") };

    public static PhotoRef Photo(byte[] picture) => new() { Sha256 = Digest(picture), Width = 4, Height = 3, Bytes = picture.Length };

    public static string Digest(byte[] picture) => Convert.ToHexStringLower(SHA256.HashData(picture));

    public static byte[] Picture(string words) => [0xff, 0xd8, .. Encoding.ASCII.GetBytes(words)];

    public static byte[] Zip(byte[]? json, params (string Name, byte[] Bytes)[] more)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var (name, part) in json is null ? more : [("field.json", json), .. more])
            {
                using var packed = zip.CreateEntry(name).Open();
                packed.Write(part);
            }
        return bytes.ToArray();
    }

    public static byte[] ZipOf(byte[] json, params byte[][] pictures) => Zip(json, [.. pictures.Select(p => ($"photos/{Digest(p)}.jpg", p))]);
}
