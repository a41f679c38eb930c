using System.Text.Json.Nodes;
using Tautline.Engine.Jobs;
using Tautline.Field.Log;

namespace Tautline.Server.Tests.Site;

/// <summary>A small job and entries of its log, as a device sends them.</summary>
internal static class Yards
{
    private static readonly Job sample = JobFile.Read(File.ReadAllBytes(Path.Combine(RunningServer.Checkout, "samples/level-yard.json"))).Job!;

    public static Job Job(string id = "harrow", string name = "Harrow yard") => sample with { Id = new(id), Name = name };

    public static object Root(Job job) => new { kind = "root", body = JsonNode.Parse(JobFile.Write(job)) };

    public static object Entry(LogEntry entry) => new { kind = "entry", body = JsonNode.Parse(LogJson.Write(entry)) };

    public static LogEntry Note(string device, long sequence, string text = "looked at it") => new() { Device = device, Sequence = sequence, Tick = 1_790_000_000_000 + sequence, At = 1_790_000_000_000, Kind = LogEntry.Note, Text = text };

    /// <summary>Sends a job and waits until the office knows it.</summary>
    public static async Task SendAsync(Browser browser, Job job)
    {
        Browser.Must(await browser.PostAsync($"api/jobs/{job.Id.Value}/items", new { items = new[] { Root(job) } }));
        await ReadyAsync(browser, job.Id.Value);
    }

    /// <summary>The row of a job once its index is up to date.</summary>
    public static async Task<JsonNode> ReadyAsync(Browser browser, string job)
    {
        for (var i = 0; ; i++)
        {
            var row = Browser.Must(await browser.GetAsync("api/jobs")).Json.AsArray().Single(j => (string)j!["id"]! == job)!;
            if ((bool)row["ready"]!) return row;
            if (i > 900) throw new InvalidOperationException($"'{job}' was never indexed");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }
}
