using Microsoft.Playwright;

namespace Tautline.Browser.Tests.Site;

/// <summary>People of companies, for the tests of the company page.</summary>
public sealed class CompanySite(BrowserSite site)
{
    public const string Password = "slow copper gate 41";

    private static int people;

    private string address = "";

    internal async Task<Visit> VisitAsync(int width = 1280, int height = 900, string language = "en-GB")
    {
        address = await site.CompaniesAsync();
        return await site.VisitAsync(width, height, language: language, address: address);
    }

    public static string NewEmail() => $"person{Interlocked.Increment(ref people)}@example.com";

    internal static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    internal static ILocator Region(IPage page, string name) => page.GetByRole(AriaRole.Region, new() { Name = name, Exact = true });

    internal async Task GoAsync(IPage page, string part = "") => await page.GotoAsync($"{address}/company.html{part}");

    /// <summary>A new company, its owner signed in.</summary>
    internal async Task<Visit> OwnerAsync(string company, string? email = null)
    {
        Visit visit = await VisitAsync();
        await GoAsync(visit.Page);
        ILocator form = Region(visit.Page, "Make the company");
        await form.GetByLabel("Name of the company").FillAsync(company);
        await form.GetByLabel("Your name").FillAsync("Ona Harrow");
        await form.GetByLabel("E-mail").FillAsync(email ?? NewEmail());
        await form.GetByLabel("Password").FillAsync(Password);
        await form.GetByRole(AriaRole.Button, new() { Name = "Make the company" }).ClickAsync();
        await Assertions.Expect(Region(visit.Page, "Jobs").First).ToBeVisibleAsync();
        return visit;
    }

    /// <summary>Somebody on a device of their own, invited by the owner.</summary>
    internal async Task<Visit> JoinAsync(Visit owner, string role, string name, int width = 1280, int height = 900)
    {
        await GoAsync(owner.Page);
        await Button(owner.Page, "People").ClickAsync();
        ILocator invite = Region(owner.Page, "Invitations").First;
        await invite.GetByLabel("Role").SelectOptionAsync(role);
        await invite.GetByRole(AriaRole.Button, new() { Name = "Invite", Exact = true }).ClickAsync();
        string address = (await invite.Locator("a.token").GetAttributeAsync("href"))!;
        await Assertions.Expect(invite.Locator(".qr svg")).ToBeVisibleAsync();
        Visit joined = await VisitAsync(width, height);
        await joined.Page.GotoAsync(address);
        ILocator form = Region(joined.Page, "Join");
        await form.GetByLabel("Your name").FillAsync(name);
        await form.GetByLabel("E-mail").FillAsync(NewEmail());
        await form.GetByLabel("Password").FillAsync(Password);
        await Button(joined.Page, "Join").ClickAsync();
        await Assertions.Expect(Region(joined.Page, "Jobs").First).ToBeVisibleAsync();
        return joined;
    }

    /// <summary>A sample at the desk, sent to the company.</summary>
    internal static async Task SendSampleAsync(Visit visit, string sample)
    {
        await visit.OpenAsync();
        await visit.OpenSampleAsync(sample);
        await visit.GoAsync("Field", "Hand over");
        await Button(visit.Page, "Send to the company").ClickAsync();
        await CarriedAsync(visit.Page, "together");
    }

    /// <summary>How the open job stands with the company.</summary>
    internal static Task CarriedAsync(IPage page, string state) => Assertions.Expect(page.Locator("[data-carrying]")).ToHaveAttributeAsync("data-carrying", state, new() { Timeout = 30_000 });

    /// <summary>Opens a job from the company's list at the desk.</summary>
    internal async Task OpenJobAsync(Visit visit, string name)
    {
        await GoAsync(visit.Page);
        await visit.Page.Locator("tr[data-job]", new() { HasText = name }).GetByRole(AriaRole.Button, new() { Name = "Open", Exact = true }).ClickAsync();
        await visit.Page.Locator(".bench").WaitForAsync(new() { Timeout = 60_000 });
    }
}
