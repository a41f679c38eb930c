using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Carrying;
using Tautline.Store.Rows;

namespace Tautline.Server.Jobs;

internal sealed record PhotoRow(string Sha256, long Bytes);

/// <summary>Photos of a job, each named by the SHA-256 of its bytes, so that sending one twice is sending it once.</summary>
internal static class PhotosApi
{
    private const int Largest = 12 << 20;

    public static void MapPhotos(this IEndpointRouteBuilder job)
    {
        job.MapGet("/photos", ListAsync).For(Role.Crew);
        job.MapGet("/photos/{sha256}", ReadAsync).For(Role.Crew);
        job.MapPut("/photos/{sha256}", WriteAsync).For(Role.Crew).WithMetadata(new Microsoft.AspNetCore.Mvc.RequestSizeLimitAttribute(Largest));
    }

    private static async Task<IResult> ListAsync(string job, StoreContext store, CancellationToken cancel)
        => !await store.Jobs.AnyAsync(j => j.JobId == job, cancel) ? Refuse.NotThere("job")
            : Results.Ok(await store.Attachments.Where(a => a.JobId == job).OrderBy(a => a.Received).Select(a => new PhotoRow(a.Hash, a.Length)).ToArrayAsync(cancel));

    private static async Task<IResult> ReadAsync(string job, string sha256, HttpContext context, StoreContext store, CancellationToken cancel)
    {
        if (await store.Attachments.AsNoTracking().FirstOrDefaultAsync(a => a.JobId == job && a.Hash == sha256, cancel) is not { } photo) return Refuse.NotThere("photo");
        if (JobsApi.Unchanged(context, $"\"{sha256}\"") is { } same) return same;
        // It came from outside: it is a picture to look at, whatever else may be in it.
        context.Response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        return Results.Bytes(photo.Bytes, photo.MediaType, $"{sha256}{Extension(photo.MediaType)}");
    }

    private static async Task<IResult> WriteAsync(string job, string sha256, HttpContext context, StorePlace place, Sessions sessions, CancellationToken cancel)
    {
        using var buffer = new MemoryStream();
        await context.Request.Body.CopyToAsync(buffer, cancel);
        var bytes = buffer.ToArray();
        if (MediaType(bytes) is not { } type) return Refuse.With(415, "picture", "A photo is JPEG, PNG or WebP.");
        if (Convert.ToHexStringLower(SHA256.HashData(bytes)) != sha256) return Refuse.With(400, "digest", "What came is not what its name says: it was damaged on the way. Send it again.");
        return await JobCarrier.PutAttachmentAsync(place, context.Caller(), job, sha256, type, bytes, sessions.Now, cancel) ? Results.NoContent() : Refuse.NotThere("job");
    }

    private static string? MediaType(ReadOnlySpan<byte> bytes)
        => bytes.StartsWith<byte>([0xFF, 0xD8, 0xFF]) ? "image/jpeg"
            : bytes.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? "image/png"
            : bytes.Length > 12 && bytes.StartsWith("RIFF"u8) && bytes[8..12].SequenceEqual("WEBP"u8) ? "image/webp" : null;

    public static string Extension(string type) => type switch { "image/png" => ".png", "image/webp" => ".webp", _ => ".jpg" };
}
