using System.Security.Cryptography;
using Tautline.Formats.Ground.GeoTiff;
using Tautline.Formats.Ground.Grids;
using Tautline.Formats.Ground.LandXml;
using Tautline.Formats.Ground.Points;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>
/// Reads ground files: survey points as text, triangulated surfaces in LandXML, grids as Esri ASCII or GeoTIFF. No content throws; everything
/// wrong is told together in <see cref="GroundFile.Problems"/>, everything open asked in <see cref="GroundFile.Questions"/>.
/// </summary>
public static class GroundReader
{
    /// <summary>Reads the bytes of a file.</summary>
    public static GroundFile Read(ReadOnlyMemory<byte> bytes, GroundOptions? options = null)
    {
        options ??= new();
        if (bytes.Length > options.Limits.StreamedBytes) return Refused(bytes.Length, options);
        return Read(ByteSource.Of(bytes), Hash(SHA256.HashData(bytes.Span)), options);
    }

    /// <summary>
    /// Reads a file from its beginning without holding it, if the stream can seek; else it is taken into memory first. The stream stays open.
    /// What the stream itself throws becomes a problem.
    /// </summary>
    public static GroundFile Read(Stream stream, GroundOptions? options = null)
    {
        options ??= new();
        try
        {
            if (!stream.CanSeek) return Read(InMemory(stream, options.Limits.StreamedBytes), options);
            if (stream.Length > options.Limits.StreamedBytes) return Refused(stream.Length, options);
            stream.Position = 0;
            return Read(ByteSource.Of(stream), Hash(SHA256.HashData(stream)), options);
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException or NotSupportedException)
        {
            return Nothing(GroundFindings.CannotBeRead(fault.Message), options, "", 0);
        }
    }

    private static GroundFile Read(ByteSource source, string hash, GroundOptions options)
    {
        if (source.Length == 0) return Nothing(GroundFindings.Empty, options, hash, 0);
        Span<byte> start = stackalloc byte[FormatSniffer.Enough];
        var (format, refused) = FormatSniffer.Of(start[..source.Read(0, start)]);
        if (options.Format is { } stated) format = stated;
        else if (refused is { } finding) return Nothing(finding, options, hash, source.Length);
        if (format == GroundFormat.SurveyPoints && source.Length > options.Limits.TextBytes) return Refused(source.Length, options, hash);
        return new(Reading(format, source, options), options, hash, source.Length);
    }

    private static GroundReading Reading(GroundFormat format, ByteSource source, GroundOptions options) => format switch
    {
        GroundFormat.SurveyPoints => SurveyPointReader.Read(source, options),
        GroundFormat.LandXml => LandXmlSurfaceReader.Read(source, options),
        GroundFormat.AsciiGrid => AsciiGridReader.Read(source, options),
        _ => GeoTiffReader.Read(source, options),
    };

    private static byte[] InMemory(Stream stream, long most)
    {
        using var copy = new MemoryStream();
        var buffer = new byte[1 << 16];
        // One byte over the limit is enough to be refused.
        while (copy.Length <= Math.Min(most, Array.MaxLength - buffer.Length) && stream.Read(buffer) is var got and > 0) copy.Write(buffer, 0, got);
        return copy.ToArray();
    }

    private static GroundFile Refused(long length, GroundOptions options, string hash = "") =>
        Nothing(GroundFindings.TooLarge(length, hash.Length > 0 ? options.Limits.TextBytes : options.Limits.StreamedBytes), options, hash, length);

    private static GroundFile Nothing(Finding finding, GroundOptions options, string hash, long length)
    {
        var problems = new ProblemList(options.SourceName);
        problems.Add(finding);
        return new(new() { Problems = problems.ToImmutable() }, options, hash, length);
    }

    private static string Hash(byte[] hash) => Convert.ToHexStringLower(hash);
}
