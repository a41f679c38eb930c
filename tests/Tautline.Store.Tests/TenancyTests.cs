using Microsoft.EntityFrameworkCore;
using Tautline.Store.Carrying;
using Tautline.Store.Rows;

namespace Tautline.Store.Tests;

public sealed class TenancyTests(Databases databases)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task NoRowOfOneCompanyIsSeenByAnotherOrByNobody(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        var them = await Databases.CompanyAsync(place, "them");
        await FillAsync(place, us);
        foreach (var type in OfCompany(place))
        {
            Assert.True(await CountAsync(place, us.CompanyId, type) > 0, $"the test has no {type.Name}");
            await using var theirs = place.Open(them.CompanyId);
            await using var ours = place.Open(us.CompanyId);
            var seen = await RowsAsync(theirs, type);
            Assert.DoesNotContain(seen, row => row.CompanyId == us.CompanyId);
            Assert.Equal(0, await CountAsync(place, null, type));
        }
        await using var other = place.Open(them.CompanyId);
        Assert.Equal(["them"], await other.Companies.Select(c => c.Name).ToListAsync(Cancel));
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task NoRowOfAnotherCompanyIsWritten(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        var them = await Databases.CompanyAsync(place, "them");
        await using var store = place.Open(us.CompanyId);
        store.Audit.Add(new AuditRow { CompanyId = them.CompanyId, At = 1, Act = "x" });
        await Assert.ThrowsAsync<InvalidOperationException>(() => store.SaveChangesAsync(Cancel));
        store.ChangeTracker.Clear();
        // A row that was got past the filter is not written either.
        var stolen = await store.Devices.IgnoreQueryFilters().SingleAsync(d => d.CompanyId == them.CompanyId, Cancel);
        stolen.Name = "mine";
        await Assert.ThrowsAsync<InvalidOperationException>(() => store.SaveChangesAsync(Cancel));
        await using var nobody = place.Open();
        nobody.Audit.Add(new AuditRow { CompanyId = us.CompanyId, At = 1, Act = "x" });
        await Assert.ThrowsAsync<InvalidOperationException>(() => nobody.SaveChangesAsync(Cancel));
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task TwoCompaniesMayNameAJobAlike(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        var them = await Databases.CompanyAsync(place, "them");
        await JobCarrier.PutAsync(place, us, "yard", [CarryingTests.Root("ours"), CarryingTests.Entry("a")], 10, Cancel);
        Assert.Equal(1, (await JobCarrier.PutAsync(place, them, "yard", [CarryingTests.Root("theirs")], 10, Cancel))!.Cursor);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task ADeviceThatIsShutOutOrUnusedOrWhosePersonLeftIsNobody(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await using var store = place.Open();
        Assert.Equal(us, await Doors.ByDeviceAsync(store, us.DeviceId!.Value, 2, Cancel));
        Assert.Null(await Doors.ByDeviceAsync(store, Guid.NewGuid(), 2, Cancel));
        Assert.Null(await Doors.ByDeviceAsync(store, us.DeviceId.Value, 2 + Doors.Unused.Ticks, Cancel));
        await using var mine = place.Open(us.CompanyId);
        await mine.Members.ExecuteUpdateAsync(set => set.SetProperty(m => m.Ended, 5), Cancel);
        Assert.Null(await Doors.ByDeviceAsync(store, us.DeviceId.Value, 6, Cancel));
        await mine.Members.ExecuteUpdateAsync(set => set.SetProperty(m => m.Ended, (long?)null), Cancel);
        await mine.Devices.ExecuteUpdateAsync(set => set.SetProperty(d => d.ShutOut, 5), Cancel);
        Assert.Null(await Doors.ByDeviceAsync(store, us.DeviceId.Value, 6, Cancel));
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task ATokenHasNoHigherRoleThanItsMaker(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await using var mine = place.Open(us.CompanyId);
        mine.Tokens.Add(new ApiToken { Name = "books", TokenHash = "h", Role = Role.Estimator, By = us.PersonId, Created = 1, Expires = 100 });
        await mine.SaveChangesAsync(Cancel);
        await using var store = place.Open();
        Assert.Equal(Role.Estimator, (await Doors.ByTokenAsync(store, "h", 50, Cancel))!.Role);
        await mine.Members.ExecuteUpdateAsync(set => set.SetProperty(m => m.Role, Role.Crew), Cancel);
        Assert.Equal(Role.Crew, (await Doors.ByTokenAsync(store, "h", 50, Cancel))!.Role);
        Assert.Null(await Doors.ByTokenAsync(store, "h", 101, Cancel));
        Assert.Null(await Doors.ByTokenAsync(store, "other", 50, Cancel));
    }

    internal static async Task FillAsync(StorePlace place, Caller us)
    {
        await JobCarrier.PutAsync(place, us, "yard", [CarryingTests.Root("{\"é\":\"ü\"}"), CarryingTests.Entry("a")], 10, Cancel);
        await JobCarrier.PutAttachmentAsync(place, us, "yard", "ab", "image/jpeg", [0, 1, 2, 255], 10, Cancel);
        await using var store = place.Open(us.CompanyId);
        store.AddRange(
            new Invitation { TokenHash = $"i{us.Company}", Role = Role.Crew, By = us.PersonId, Created = 1, Expires = 9 },
            new ApiToken { Name = "books", TokenHash = $"t{us.Company}", Role = Role.Crew, By = us.PersonId, Created = 1, Expires = 9 },
            new ShareLink { JobId = "yard", TokenHash = $"l{us.Company}", Paper = "site", By = us.PersonId, Created = 1, Expires = 9 },
            new AuditRow { At = 7, PersonId = us.PersonId, Act = "x", Detail = "'; DROP TABLE \"Jobs\"; --" });
        await store.SaveChangesAsync(Cancel);
    }

    private static List<Type> OfCompany(StorePlace place)
    {
        using var store = place.Open();
        List<Type> types = [.. store.Model.GetEntityTypes().Select(e => e.ClrType).Where(t => t.IsAssignableTo(typeof(IOfCompany)))];
        Assert.Equal(9, types.Count);
        return types;
    }

    private static async Task<int> CountAsync(StorePlace place, Guid? company, Type type)
    {
        await using var store = place.Open(company);
        return (await RowsAsync(store, type)).Count;
    }

    private static Task<List<IOfCompany>> RowsAsync(StoreContext store, Type type)
        => (Task<List<IOfCompany>>)typeof(TenancyTests).GetMethod(nameof(AllAsync), System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.NonPublic)!.MakeGenericMethod(type).Invoke(null, [store])!;

    private static async Task<List<IOfCompany>> AllAsync<T>(StoreContext store) where T : class, IOfCompany => [.. await store.Set<T>().ToListAsync(Cancel)];
}
