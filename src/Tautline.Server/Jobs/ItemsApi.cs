using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Tautline.Engine.Jobs;
using Tautline.Field.Log;
using Tautline.Field.Merging;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Carrying;
using Tautline.Store.Rows;

namespace Tautline.Server.Jobs;

internal sealed record SentItem(string Kind, JsonElement Body);

internal sealed record SentItems(IReadOnlyList<SentItem> Items);

internal sealed record TakenItem(int Index, long Number, string Hash);

internal sealed record RefusedItem(int Index, string Code, string Message);

internal sealed record SentAnswer(IReadOnlyList<TakenItem> Taken, IReadOnlyList<RefusedItem> Refused, long Cursor);

/// <param name="Body">Written as it was sent, byte for byte, so that its digest stays true.</param>
internal sealed record ItemRow(long Number, string Kind, string Hash, string Person, [property: JsonConverter(typeof(AsSent))] byte[] Body);

internal sealed record ItemPage(IReadOnlyList<ItemRow> Items, long Cursor, bool More);

/// <summary>What devices share of a job, both ways. Sending the same again changes nothing; what was answered is on disk.</summary>
internal static class ItemsApi
{
    public const int MostItems = 1000;
    public const int LargestBody = 32 << 20;
    private const int LargestPage = 4 << 20;

    public static void MapItems(this IEndpointRouteBuilder job)
    {
        job.MapGet("/items", ReadAsync).For(Role.Crew);
        job.MapPost("/items", SendAsync).For(Role.Crew).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(LargestBody));
    }

    private static async Task<IResult> ReadAsync(string job, long? after, int? limit, StoreContext store, CancellationToken cancel)
    {
        var (from, most) = (after ?? 0, Math.Clamp(limit ?? 500, 1, MostItems));
        if (await store.Jobs.Where(j => j.JobId == job).Select(j => (long?)j.LastNumber).FirstOrDefaultAsync(cancel) is not { } last) return Refuse.NotThere("job");
        List<ItemRow> rows = [];
        long bytes = 0;
        var found = (from item in store.Items
                     where item.JobId == job && item.Number > @from
                     orderby item.Number
                     join person in store.Users on item.PersonId equals person.Id
                     select new { item.Number, item.Kind, item.Hash, item.Body, person.Name }).Take(most).AsAsyncEnumerable();
        await foreach (var item in found.WithCancellation(cancel))
        {
            rows.Add(new(item.Number, Name(item.Kind), item.Hash, item.Name, item.Body));
            // At least one, so that a large one does not stop everything behind it.
            if ((bytes += item.Body.Length) > LargestPage) break;
        }
        var cursor = rows.Count > 0 ? rows[^1].Number : Math.Min(from, last);
        return Results.Ok(new ItemPage(rows, cursor, cursor < last));
    }

    private static async Task<IResult> SendAsync(string job, SentItems sent, HttpContext context, StorePlace place, Sessions sessions, CancellationToken cancel)
    {
        if (job.Length > StoredJob.LongestId) return Refuse.Field("job", $"The name of a job has at most {StoredJob.LongestId} characters.");
        if (sent.Items is not { Count: > 0 and <= MostItems }) return Refuse.Field("items", $"Send 1 to {MostItems} items at a time.");
        var caller = context.Caller();
        List<(int Index, Sent Item)> good = [];
        List<RefusedItem> refused = [];
        foreach (var (item, i) in sent.Items.Select((item, i) => (item, i)))
        {
            if (Judge(job, caller.Role, item, out var kind) is var (code, words)) refused.Add(new(i, code, words));
            else good.Add((i, Packed(kind, item.Body)));
        }
        if (good.Count == 0) return Results.Ok(new SentAnswer([], refused, 0));
        if (await JobCarrier.PutAsync(place, caller, job, [.. good.Select(g => g.Item)], sessions.Now, cancel) is not { } done) return Refuse.NotThere("job");
        return Results.Ok(new SentAnswer([.. good.Select((g, n) => new TakenItem(g.Index, done.Taken[n].Number, g.Item.Hash))], refused, done.Cursor));
    }

    private static Sent Packed(ItemKind kind, JsonElement body)
    {
        var bytes = AsItStood(body).ToArray();
        return new(kind, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes);
    }

    private static ReadOnlySpan<byte> AsItStood(JsonElement body) => System.Runtime.InteropServices.JsonMarshal.GetRawUtf8Value(body);

    /// <summary>Why an item is not taken; nothing where it is.</summary>
    private static (string Code, string Words)? Judge(string job, Role role, SentItem item, out ItemKind kind)
    {
        kind = default;
        if (item is not { Body.ValueKind: JsonValueKind.Object }) return ("malformed", "An item is an object of 'kind' and 'body', and its body is an object.");
        switch (item.Kind)
        {
            case "root":
                kind = ItemKind.Root;
                return role < Role.Foreman ? ("role", "A job is made and changed by a foreman, an estimator or an owner: it stays on this device.") : Root(job, item.Body);
            case "change":
                kind = ItemKind.Change;
                return role < Role.Foreman ? ("role", "A job is changed by a foreman, an estimator or an owner: the change stays on this device.") : Change(item.Body);
            case "entry":
                kind = ItemKind.Entry;
                return Entry(item.Body);
            default:
                return ("kind", $"'{item.Kind}' is nothing this server knows: root, change or entry. A later program wrote it: it stays on this device until the server is updated.");
        }
    }

    private static (string, string)? Root(string job, JsonElement body)
        => JobFile.Read(AsItStood(body)) is not { Job: { } read, HasErrors: false } ? ("malformed", "This is no job file that can be read.")
            : read.Id.Value != job ? ("job", $"This is job '{read.Id.Value}', and it was sent as '{job}'.") : null;

    private static (string, string)? Change(JsonElement body)
    {
        try
        {
            ExchangeText.Read(body);
            return null;
        }
        catch (JsonException slip)
        {
            return ("malformed", $"This is no change of a job: {slip.Message}");
        }
    }

    private static (string, string)? Entry(JsonElement body) => LogJson.Read(AsItStood(body), out var fault) is null ? ("malformed", $"This is no entry of a log: {fault}") : null;

    public static string Name(ItemKind kind) => kind.ToString().ToLowerInvariant();
}

/// <summary>JSON that is written as it came.</summary>
internal sealed class AsSent : JsonConverter<byte[]>
{
    public override byte[] Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException();

    public override void Write(Utf8JsonWriter writer, byte[] value, JsonSerializerOptions options) => writer.WriteRawValue(value, skipInputValidation: true);
}
