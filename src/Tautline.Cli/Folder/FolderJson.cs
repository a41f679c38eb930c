using System.Text.Json;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Folder;

/// <summary>The summary of a folder as JSON. Lengths are metres.</summary>
internal static class FolderJson
{
    public static string Write(FolderSummary all) => JsonText.Write(json =>
    {
        json.WriteStartObject();
        json.WriteString("folder", all.Folder);
        json.WriteStartArray("jobs");
        foreach (var job in all.Jobs) Job(json, job);
        json.WriteEndArray();
        json.WriteStartObject("totals");
        json.WriteNumber("jobs", all.Jobs.Count);
        json.WriteNumber("planned", all.Planned.Count());
        Totals(json, all.Totals);
        Problems(json, all.Count);
        json.WriteEndObject();
        json.WriteNumber("otherFiles", all.Others);
        json.WriteEndObject();
    });

    private static void Job(Utf8JsonWriter json, FolderJob job)
    {
        json.WriteStartObject();
        json.WriteString("file", job.File);
        if (job.Job is { } id) json.WriteString("job", id.Value);
        if (job.Name is { } name) json.WriteString("name", name);
        if (job.Totals is { } totals) Totals(json, totals);
        Problems(json, job.Count);
        if (job.Hash is { } hash) json.WriteString("planHash", hash);
        if (job.Why is { } why) json.WriteString("why", why);
        if (job.Written is { } path) json.WriteString("written", path);
        json.WriteEndObject();
    }

    private static void Totals(Utf8JsonWriter json, PlanTotals totals)
    {
        json.WriteNumber("lines", totals.Lines);
        json.WriteNumber("fence", totals.Fence.Metres);
        json.WriteNumber("posts", totals.Posts);
        json.WriteNumber("gates", totals.Gates);
    }

    private static void Problems(Utf8JsonWriter json, Func<Severity, int> count)
    {
        json.WriteStartObject("problems");
        foreach (var severity in Enum.GetValues<Severity>().OrderDescending()) json.WriteNumber(Messages.Word(severity), count(severity));
        json.WriteEndObject();
    }
}
