using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Access;

/// <summary>Writes down what was done, with what it is done with.</summary>
internal static class Audited
{
    /// <summary>Saves what the context has changed together with the row that says so.</summary>
    public static Task AddAsync(StoreContext store, Caller caller, long now, string act, string subject, string detail, CancellationToken cancel)
    {
        store.Audit.Add(new AuditRow { At = now, PersonId = caller.PersonId, DeviceId = caller.DeviceId, Act = act, Subject = subject, Detail = detail });
        return store.SaveChangesAsync(cancel);
    }
}

/// <summary>Roles as they are written.</summary>
internal static class Roles
{
    public const string Words = "owner, estimator, foreman or crew";

    public static string Name(Role role) => role.ToString().ToLowerInvariant();

    public static Role? Of(string? name) => name switch { "owner" => Role.Owner, "estimator" => Role.Estimator, "foreman" => Role.Foreman, "crew" => Role.Crew, _ => null };
}
