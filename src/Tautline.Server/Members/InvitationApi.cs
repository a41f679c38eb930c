using Microsoft.EntityFrameworkCore;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Members;

internal sealed record NewInvitation(string Role, string? Email, int? Days);

internal sealed record InvitationRow(Guid Id, string Role, string Email, DateTimeOffset Expires);

/// <param name="Token">Shown this once.</param>
internal sealed record MadeSecret(Guid Id, string Token, DateTimeOffset Expires);

internal sealed record InvitationLook(string Token);

internal sealed record InvitationSeen(string Company, string Role, string Email);

internal sealed record Acceptance(string Token, string? Name, string? Email, string? Password, string? Passkey, string? Device);

internal sealed record NewToken(string Name, string Role, int? Days);

internal sealed record TokenRow(Guid Id, string Name, string Role, DateTimeOffset Expires, DateTimeOffset? Used);

/// <summary>Invitations of people, and tokens for programs.</summary>
internal static class InvitationApi
{
    private const int MostInviteDays = 30;
    private const int MostTokenDays = 366;

    public static void MapInvitations(this IEndpointRouteBuilder api)
    {
        var invitations = api.MapGroup("/invitations").WithTags("invitations");
        invitations.MapGet("", ListAsync).For(Role.Owner);
        invitations.MapPost("", MakeAsync).For(Role.Owner);
        invitations.MapDelete("/{id:guid}", WithdrawAsync).For(Role.Owner);
        invitations.MapPost("/look", LookAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        invitations.MapPost("/accept", AcceptAsync).AllowAnonymous().RequireRateLimiting(Limits.SignIn);
        var tokens = api.MapGroup("/tokens").WithTags("tokens");
        tokens.MapGet("", TokensAsync).For(Role.Owner);
        tokens.MapPost("", MakeTokenAsync).For(Role.Owner);
        tokens.MapDelete("/{id:guid}", WithdrawTokenAsync).For(Role.Owner);
    }

    private static async Task<InvitationRow[]> ListAsync(StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var now = sessions.Now;
        return await store.Invitations.Where(i => i.Accepted == null && i.Withdrawn == null && i.Expires > now).OrderBy(i => i.Expires)
            .Select(i => new InvitationRow(i.Id, Roles.Name(i.Role), i.Email, Times.Of(i.Expires))).ToArrayAsync(cancel);
    }

    private static async Task<IResult> MakeAsync(NewInvitation asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (Roles.Of(asked.Role) is not { } role) return Refuse.Field("role", $"A role is {Roles.Words}.");
        if (asked.Days is < 1 or > MostInviteDays) return Refuse.Field("days", $"An invitation is good for 1 to {MostInviteDays} days.");
        if (asked.Email is { Length: > 0 } && Fields.Email(asked.Email) is null) return Refuse.Field("email", "An e-mail address looks like name@example.com.");
        var token = Secret.Make();
        var made = new Invitation
        {
            TokenHash = Secret.Hash(token),
            Role = role,
            Email = asked.Email?.Trim() ?? "",
            By = context.Caller().PersonId,
            Created = sessions.Now,
            Expires = sessions.Now + TimeSpan.FromDays(asked.Days ?? 7).Ticks,
        };
        store.Invitations.Add(made);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "invitation.make", made.Email, Roles.Name(role), cancel);
        return Results.Ok(new MadeSecret(made.Id, token, Times.Of(made.Expires)));
    }

    private static async Task<IResult> WithdrawAsync(Guid id, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (await store.Invitations.FirstOrDefaultAsync(i => i.Id == id && i.Accepted == null && i.Withdrawn == null, cancel) is not { } found) return Refuse.NotThere("invitation");
        found.Withdrawn = sessions.Now;
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "invitation.withdraw", found.Email, "", cancel);
        return Results.NoContent();
    }

    private static async Task<IResult> LookAsync(InvitationLook asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
        => sessions.Refused(context) is { } refused ? refused
            : await Doors.ByInvitationAsync(store, Secret.Hash(asked.Token ?? ""), sessions.Now, cancel) is { } found
            ? Results.Ok(new InvitationSeen(found.Company, Roles.Name(found.Invitation.Role), found.Invitation.Email)) : Gone();

    /// <summary>Makes an account and joins; who is signed in already joins with the account there is.</summary>
    private static async Task<IResult> AcceptAsync(Acceptance asked, HttpContext context, StoreContext store, Sessions sessions, Joining joining, CancellationToken cancel)
    {
        if (sessions.Refused(context) is { } refused) return refused;
        if (await Doors.ByInvitationAsync(store, Secret.Hash(asked.Token ?? ""), sessions.Now, cancel) is not { } found) return Gone();
        if (context.CallerOrNobody() is not { } caller)
            return await joining.MakeAsync(context, new(asked.Name ?? "", asked.Email ?? "", asked.Password, asked.Passkey), person => JoinAsync(context, store, sessions, found.Invitation, person, asked.Device, cancel), cancel);
        await using var all = await store.BeginWriteAsync(cancel);
        var result = await JoinAsync(context, store, sessions, found.Invitation, await store.Users.SingleAsync(p => p.Id == caller.PersonId, cancel), asked.Device, cancel);
        if (result is not IStatusCodeHttpResult { StatusCode: >= 400 }) await all.CommitAsync(cancel);
        return result;
    }

    private static async Task<IResult> JoinAsync(HttpContext context, StoreContext store, Sessions sessions, Invitation invitation, Store.People.Person person, string? device, CancellationToken cancel)
    {
        var now = sessions.Now;
        store.CompanyId = invitation.CompanyId;
        // One that two accept at once is given to the first.
        if (await store.Invitations.Where(i => i.Id == invitation.Id && i.Accepted == null && i.Withdrawn == null).ExecuteUpdateAsync(set => set.SetProperty(i => i.Accepted, now), cancel) != 1) return Gone();
        var member = await store.Members.FirstOrDefaultAsync(m => m.PersonId == person.Id, cancel);
        if (member is { Ended: null }) return Refuse.With(409, "member", "You belong to this company already.");
        if (member is not null) (member.Ended, member.Role) = (null, invitation.Role);
        else store.Members.Add(new Member { PersonId = person.Id, Role = invitation.Role, Created = now });
        return await sessions.BeginAsync(context, store, invitation.CompanyId, person, device, "invitation.accept", cancel);
    }

    private static IResult Gone() => Refuse.With(404, "invitation", "This invitation was used, withdrawn or has expired. Ask for another.");

    private static async Task<TokenRow[]> TokensAsync(StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        var now = sessions.Now;
        return await store.Tokens.Where(t => t.Withdrawn == null && t.Expires > now).OrderBy(t => t.Name)
            .Select(t => new TokenRow(t.Id, t.Name, Roles.Name(t.Role), Times.Of(t.Expires), Times.Of(t.Used))).ToArrayAsync(cancel);
    }

    private static async Task<IResult> MakeTokenAsync(NewToken asked, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (Fields.Name(asked.Name) is not { } name) return Refuse.Field("name", "A token needs a name of 1 to 100 characters: what it is for.");
        if (Roles.Of(asked.Role) is not { } role) return Refuse.Field("role", $"A role is {Roles.Words}.");
        if (asked.Days is < 1 or > MostTokenDays) return Refuse.Field("days", $"A token is good for 1 to {MostTokenDays} days.");
        var token = Secret.Make();
        var made = new ApiToken { Name = name, TokenHash = Secret.Hash(token), Role = role, By = context.Caller().PersonId, Created = sessions.Now, Expires = sessions.Now + TimeSpan.FromDays(asked.Days ?? 90).Ticks };
        store.Tokens.Add(made);
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "token.make", name, Roles.Name(role), cancel);
        return Results.Ok(new MadeSecret(made.Id, token, Times.Of(made.Expires)));
    }

    private static async Task<IResult> WithdrawTokenAsync(Guid id, HttpContext context, StoreContext store, Sessions sessions, CancellationToken cancel)
    {
        if (await store.Tokens.FirstOrDefaultAsync(t => t.Id == id && t.Withdrawn == null, cancel) is not { } found) return Refuse.NotThere("token");
        found.Withdrawn = sessions.Now;
        await Audited.AddAsync(store, context.Caller(), sessions.Now, "token.withdraw", found.Name, "", cancel);
        return Results.NoContent();
    }
}
