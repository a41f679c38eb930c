using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using Tautline.Server.Access;

namespace Tautline.Server.Hosting;

/// <summary>How much one device may ask. Each process counts for itself: nothing is lost where one forgets.</summary>
internal static class Limits
{
    public const string SignIn = "sign-in";

    public const int LargestBody = 1 << 20;

    public static void AddLimits(this IServiceCollection services, ServerSettings settings) => services.AddRateLimiter(o =>
    {
        o.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context => context.Request.Path.StartsWithSegments("/api")
            ? RateLimitPartition.GetTokenBucketLimiter(Who(context), _ => new()
            {
                TokenLimit = settings.Requests,
                TokensPerPeriod = Math.Max(1, settings.Requests / 60),
                ReplenishmentPeriod = TimeSpan.FromSeconds(1),
                QueueLimit = 0,
            })
            : RateLimitPartition.GetNoLimiter(""));
        o.AddPolicy(SignIn, context => RateLimitPartition.GetFixedWindowLimiter(Address(context), _ => new() { PermitLimit = settings.SignIns, Window = TimeSpan.FromMinutes(1), QueueLimit = 0 }));
        o.OnRejected = async (rejected, _) =>
        {
            var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(5);
            rejected.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
            await Refuse.WriteAsync(rejected.HttpContext, 429, "too-many", "Too many requests: wait a little and go on.");
        };
    });

    private static string Who(HttpContext context)
        => context.CallerOrNobody() is { } caller ? $"{caller.CompanyId} {caller.PersonId} {caller.DeviceId} {caller.Device}" : Address(context);

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";
}
