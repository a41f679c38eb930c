using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;
using Tautline.Server.Jobs;
using Tautline.Store.Rows;

namespace Tautline.Server.Import;

internal sealed record ListedJob(Job Job, JobState State);

/// <summary>A company's list of jobs as it stood in another table. A row that cannot be taken whole is not taken, and told with all that is wrong with it.</summary>
internal static class JobList
{
    private static readonly Dictionary<string, string[]> columns = new(StringComparer.Ordinal)
    {
        ["name"] = ["job", "jobname", "title", "project"],
        ["number"] = ["no", "jobnumber", "jobno", "id", "ref", "reference"],
        ["customer"] = ["client", "owner", "contact"],
        ["address"] = ["site", "siteaddress", "location"],
        ["phone"] = ["telephone", "tel", "mobile"],
        ["email"] = ["mail", "emailaddress"],
        ["notes"] = ["note", "remarks", "comment", "comments"],
        ["state"] = ["status", "stage"],
        ["units"] = ["unit"],
        ["height"] = ["fenceheight"],
        ["length"] = ["fencelength", "footage", "run"],
        ["tape"] = ["tapebook"],
    };

    private static readonly string[] carried = ["number", "customer", "address", "phone", "email", "notes"];

    public static (IReadOnlyList<ListedJob> Jobs, IReadOnlyList<ImportLine> Lines) Read(byte[] file)
    {
        List<ImportLine> lines = [];
        List<ListedJob> jobs = [];
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        foreach (var row in CsvRows.Read(file, columns, "name", lines))
        {
            var before = lines.Count;
            var state = State(row, lines);
            var job = Made(row, lines);
            if (job is not null && !seen.TryAdd(job.Id.Value, row.Line)) lines.Add(new(row.Line, "", $"It is the same job as in line {seen[job.Id.Value]}: give them different numbers, or names where there are none."));
            if (lines.Count == before && job is not null) jobs.Add(new(job, state));
        }
        return (jobs, lines);
    }

    private static JobState State(CsvRow row, List<ImportLine> lines)
    {
        if (row["state"].Length == 0) return JobState.Lead;
        if (JobStates.Of(row["state"].ToLowerInvariant()) is { } state) return state;
        lines.Add(new(row.Line, row.Heading("state"), $"'{row["state"]}' is no state: write {JobStates.Words}, or leave it empty."));
        return JobState.Lead;
    }

    private static Job? Made(CsvRow row, List<ImportLine> lines)
    {
        if (row["name"].Length is 0 or > 200) lines.Add(new(row.Line, row.Heading("name"), "A job needs a name of 1 to 200 characters."));
        var units = Units(row, lines);
        var height = Height(row, units, lines);
        var job = row["tape"].Length > 0 ? Tape(row, lines) : new Job { Id = new("x"), Specs = [new() { Id = new("fence"), Height = height, Brace = "no" }] };
        if (row["length"].Length > 0 && row["tape"].Length == 0 && job is not null) job = Straight(job, row, units, lines);
        return job is null ? null : job with
        {
            Id = Id(row),
            Name = row["name"],
            Units = units,
            Extra = new(job.Extra ?? []) { ["imported"] = JsonSerializer.SerializeToElement(Beside(row)) },
        };
    }

    private static UnitSystem Units(CsvRow row, List<ImportLine> lines)
    {
        switch (row["units"].ToLowerInvariant())
        {
            case "" or "us" or "ft" or "feet":
                return UnitSystem.UsCustomary;
            case "metric" or "m":
                return UnitSystem.Metric;
            default:
                lines.Add(new(row.Line, row.Heading("units"), $"'{row["units"]}' is no system of units: write us or metric."));
                return UnitSystem.UsCustomary;
        }
    }

    private static Length Height(CsvRow row, UnitSystem units, List<ImportLine> lines)
    {
        if (row["height"].Length == 0) return Length.FromFeet(6);
        var height = Read(row, "height", units, lines);
        if (height is { } read && (read < Length.FromFeet(2) || read > Length.FromFeet(20))) lines.Add(new(row.Line, row.Heading("height"), $"A fence is 2 to 20 ft high, here '{row["height"]}'."));
        return height ?? Length.FromFeet(6);
    }

    private static Length? Read(CsvRow row, string column, UnitSystem units, List<ImportLine> lines)
    {
        var parsed = LengthText.Parse(row[column], units == UnitSystem.Metric ? LengthUnit.Metre : LengthUnit.Foot);
        if (parsed.Ok) return parsed.Value;
        lines.Add(new(row.Line, row.Heading(column), $"{parsed.Problem.Message} {parsed.Problem.Hint}"));
        return null;
    }

    private static Job? Tape(CsvRow row, List<ImportLine> lines)
    {
        var book = TapeBookReader.Read(row["tape"]);
        if (book.Job is not null) return book.Job;
        lines.AddRange(book.Problems.Take(5).Select(p => new ImportLine(row.Line, row.Heading("tape"), $"Line {p.Line} of the tape book: {p.Message}")));
        return null;
    }

    private static Job Straight(Job job, CsvRow row, UnitSystem units, List<ImportLine> lines)
    {
        if (Read(row, "length", units, lines) is not { } length) return job;
        if (length <= Length.Zero || length > Length.FromFeet(528_000)) lines.Add(new(row.Line, row.Heading("length"), $"A fence is up to 100 miles long, here '{row["length"]}'."));
        return job with
        {
            Lines =
            [
                new()
                {
                    Id = new("fence-line"), Order = new("i"), Spec = new("fence"),
                    Vertices = [new() { Id = new("v1"), Order = new("1"), East = Length.Zero, North = Length.Zero, Leg = new() { Id = new("leg1") } }, new() { Id = new("v2"), Order = new("2"), East = length, North = Length.Zero }],
                },
            ],
        };
    }

    /// <summary>The same row gives the same job, so that a list that is sent again makes nothing twice.</summary>
    private static JobId Id(CsvRow row)
    {
        var from = row["number"].Length > 0 ? $"number {row["number"]}" : $"name {row["name"]} {row["address"]}";
        return new($"import-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(from)))[..16]}");
    }

    private static SortedDictionary<string, string> Beside(CsvRow row)
    {
        SortedDictionary<string, string> beside = new(StringComparer.Ordinal);
        foreach (var column in carried.Where(c => row[c].Length > 0)) beside[column] = row[column];
        foreach (var (heading, text) in row.Others) beside.TryAdd(heading, text);
        return beside;
    }
}
