using System.Text.Json;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Jobs;

/// <summary>What came of reading a job file.</summary>
/// <param name="Job">The job, unless the text is no job at all.</param>
/// <param name="ReadOnly">True where the file says a part must be understood that is not: no plan, no writing.</param>
public sealed record JobReading(Job? Job, bool ReadOnly, IReadOnlyList<Problem> Problems)
{
    public bool HasErrors => Problems.Any(p => p.Severity == Severity.Error);
}

/// <summary>Reads and writes job files: JSON, UTF-8, metres.</summary>
public static class JobFile
{
    /// <summary>A job with a walked profile every foot of a hundred miles is about 40 MB; more is no job.</summary>
    public const long LargestBytes = 64L << 20;

    /// <summary>Parts a document may ask to be understood that this version does.</summary>
    private static readonly HashSet<string> understood = new(StringComparer.Ordinal);

    /// <summary>Reads a job. Never throws for what is in the text: everything wrong is reported together.</summary>
    public static JobReading Read(ReadOnlySpan<byte> utf8)
    {
        var problems = new ProblemList();
        if (TooLarge(utf8.Length, problems)) return new(null, false, problems.Found);
        if (utf8.StartsWith("\uFEFF"u8)) utf8 = utf8[3..];
        List<FieldSlip> slips = [];
        var job = Parse(utf8, slips, problems);
        foreach (var slip in slips) problems.Add(ProblemCode.FileField, new(JsonPlace.At(utf8, slip.Offset)), $"{slip.Found} where {slip.Expected} belongs");
        var readOnly = job is not null && Envelope(job, problems);
        return new(job, readOnly, problems.Found);
    }

    /// <summary>True, and told, where a file is larger than any job.</summary>
    public static bool TooLarge(long bytes, ProblemList problems)
    {
        if (bytes <= LargestBytes) return false;
        problems.Add(ProblemCode.FileTooLarge, new(""), Math.Round(bytes / 1048576.0), LargestBytes / 1048576.0);
        return true;
    }

    /// <summary>The job as JSON with line feeds, ending in one.</summary>
    /// <exception cref="InvalidOperationException">The job must not be written: it holds parts that must be understood and are not.</exception>
    public static byte[] Write(Job job)
    {
        if (job.MustUnderstand.FirstOrDefault(m => !understood.Contains(m)) is { } unknown)
            throw new InvalidOperationException($"the job says '{unknown}' must be understood; a program that does not may not write it");
        return [.. JsonSerializer.SerializeToUtf8Bytes(job, JobJson.With(null).Job), (byte)'\n'];
    }

    private static Job? Parse(ReadOnlySpan<byte> utf8, List<FieldSlip> slips, ProblemList problems)
    {
        try
        {
            return JsonSerializer.Deserialize(utf8, JobJson.With(slips).Job) ?? NotJob("null", problems);
        }
        catch (JsonException slip)
        {
            // Whether the text or one of its values is at fault: the reader names the path only for a value.
            var where = $"line {slip.LineNumber + 1}, column {slip.BytePositionInLine + 1}";
            var isValue = IsJson(utf8);
            problems.Add(
                isValue ? ProblemCode.FileField : ProblemCode.FileNotJson, new(isValue ? $"{slip.Path} ({where})" : where), isValue ? JsonSlip.Misfit(utf8, slip) : JsonSlip.Broken(utf8, slip));
            return null;
        }
    }

    private static bool IsJson(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8);
        try
        {
            while (reader.Read()) { }
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static Job? NotJob(string found, ProblemList problems)
    {
        problems.Add(ProblemCode.FileNotJob, new("format"), found);
        return null;
    }

    private static bool Envelope(Job job, ProblemList problems)
    {
        if (job.Format != Job.FormatName) NotJob($"\"{job.Format}\"", problems);
        if (job.Version > Job.CurrentVersion) problems.Add(ProblemCode.FileNewer, new("version"), job.Version, Job.CurrentVersion);
        var unknown = job.MustUnderstand.Where(m => !understood.Contains(m)).ToList();
        foreach (var part in unknown) problems.Add(ProblemCode.FileMustUnderstand, new("mustUnderstand"), part);
        return unknown.Count > 0;
    }
}
