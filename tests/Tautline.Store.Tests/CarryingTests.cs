using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Tautline.Store.Carrying;
using Tautline.Store.Rows;

namespace Tautline.Store.Tests;

public sealed class CarryingTests(Databases databases)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task ItemsGetNumbersInTheOrderTheyCome(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        var first = await JobCarrier.PutAsync(place, us, "yard", [Root("{}"), Entry("a")], 10, Cancel);
        var second = await JobCarrier.PutAsync(place, us, "yard", [Entry("b"), Entry("a"), Entry("c")], 11, Cancel);
        Assert.True(first!.Made);
        Assert.Equal([1, 2], first.Taken.Select(t => t.Number));
        Assert.False(second!.Made);
        Assert.Equal([3, 2, 4], second.Taken.Select(t => t.Number));
        Assert.Equal(4, second.Cursor);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task TheSameAgainChangesNothing(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        for (var again = 0; again < 3; again++) Assert.Equal(2, (await JobCarrier.PutAsync(place, us, "yard", [Root("{}"), Entry("a"), Entry("a")], 10 + again, Cancel))!.Cursor);
        await using var store = place.Open(us.CompanyId);
        Assert.Equal(["{}", "a"], (await store.Items.OrderBy(i => i.Number).ToListAsync(Cancel)).Select(i => Encoding.UTF8.GetString(i.Body)));
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task WithoutARootThereIsNoJob(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        Assert.Null(await JobCarrier.PutAsync(place, us, "yard", [Entry("a")], 10, Cancel));
        await using var store = place.Open(us.CompanyId);
        Assert.Empty(await store.Jobs.ToListAsync(Cancel));
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task OneJobMadeByManyAtOnceIsMadeOnceAndMissesNothing(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await Task.WhenAll(Enumerable.Range(0, 8).Select(crew => Task.Run(async () =>
        {
            for (var i = 0; i < 12; i++) Assert.NotNull(await JobCarrier.PutAsync(place, us, "yard", [Root("{}"), Entry($"{crew} {i}")], 10, Cancel));
        }, Cancel)));
        await using var store = place.Open(us.CompanyId);
        Assert.Equal(Enumerable.Range(1, 97).Select(n => (long)n), await store.Items.OrderBy(i => i.Number).Select(i => i.Number).ToListAsync(Cancel));
        Assert.Equal(97, (await store.Jobs.SingleAsync(Cancel)).LastNumber);
    }

    /// <summary>A reader that goes on from the last number it saw sees every item once, while others write.</summary>
    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task WhoGoesOnFromTheLastNumberMissesNothing(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await JobCarrier.PutAsync(place, us, "yard", [Root("{}")], 10, Cancel);
        var writing = Task.WhenAll(Enumerable.Range(0, 6).Select(crew => Task.Run(async () =>
        {
            for (var i = 0; i < 20; i++) await JobCarrier.PutAsync(place, us, "yard", [Entry($"{crew} {i}"), Entry($"{crew} {i} more")], 10, Cancel);
        }, Cancel)));
        List<long> seen = [];
        for (var last = false; !last;)
        {
            last = writing.IsCompleted;
            await using var store = place.Open(us.CompanyId);
            var after = seen.Count == 0 ? 0 : seen[^1];
            seen.AddRange(await store.Items.Where(i => i.Number > after).OrderBy(i => i.Number).Select(i => i.Number).ToListAsync(Cancel));
        }
        await writing;
        Assert.Equal(Enumerable.Range(1, 241).Select(n => (long)n), seen);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task APhotoIsKeptOnce(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        Assert.False(await JobCarrier.PutAttachmentAsync(place, us, "yard", "ab", "image/jpeg", [1, 2], 10, Cancel));
        await JobCarrier.PutAsync(place, us, "yard", [Root("{}")], 10, Cancel);
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(async () => Assert.True(await JobCarrier.PutAttachmentAsync(place, us, "yard", "ab", "image/jpeg", [1, 2], 10, Cancel)), Cancel)));
        await using var store = place.Open(us.CompanyId);
        Assert.Equal([1, 2], (await store.Attachments.SingleAsync(Cancel)).Bytes);
    }

    [Theory, MemberData(nameof(Databases.Both), MemberType = typeof(Databases))]
    public async Task AStaleJobIsTakenByOneAtATimeAndAgainWhenThatOneDies(string kind)
    {
        var place = await databases.EmptyAsync(kind);
        var us = await Databases.CompanyAsync(place, "us");
        await JobCarrier.PutAsync(place, us, "yard", [Root("{}")], 10, Cancel);
        await using var store = place.Open();
        Assert.Equal((us.CompanyId, "yard"), await Doors.TakeStaleJobAsync(store, now: 100, until: 200, Cancel));
        Assert.Null(await Doors.TakeStaleJobAsync(store, now: 150, until: 250, Cancel));
        Assert.Equal((us.CompanyId, "yard"), await Doors.TakeStaleJobAsync(store, now: 201, until: 300, Cancel));
    }

    internal static Sent Root(string text) => Of(ItemKind.Root, text);

    internal static Sent Entry(string text) => Of(ItemKind.Entry, text);

    private static Sent Of(ItemKind kind, string text) => new(kind, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), Encoding.UTF8.GetBytes(text));
}
