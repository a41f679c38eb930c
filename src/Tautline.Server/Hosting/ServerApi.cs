using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Import;
using Tautline.Server.Jobs;
using Tautline.Server.Members;

namespace Tautline.Server.Hosting;

/// <summary>All addresses that answer something worked out or kept.</summary>
internal static class ServerApi
{
    public const string Role = "x-role";

    public static void AddDescription(this IServiceCollection services) => services.AddOpenApi(o => o.AddOperationTransformer((operation, context, _) =>
    {
        // Who may call it, for readers and for the test that tries everybody.
        var role = context.Description.ActionDescriptor.EndpointMetadata.OfType<NeedsRole>().FirstOrDefault()?.Role;
        operation.Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal);
        operation.Extensions[Role] = new JsonNodeExtension(JsonValue.Create(role is { } needed ? Roles.Name(needed) : "anybody")!);
        return Task.CompletedTask;
    }));

    public static void MapApi(this WebApplication app)
    {
        var api = app.MapGroup("/api");
        api.MapAccount();
        api.MapPeople();
        api.MapInvitations();
        api.MapJobs();
        api.MapExport();
        api.MapImport();
        app.MapShared();
        app.MapOpenApi("/openapi/{documentName}.json").AllowAnonymous();
        app.MapHealthChecks("/health/live", new() { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready").AllowAnonymous();
    }
}
