using System.Text;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>Several people of a company, each on a device of their own, and the server between them.</summary>
[Trait("Category", "Slow")]
public sealed class CompanyTests(BrowserSite site)
{
    private readonly CompanySite company = new(site);

    [Fact]
    public async Task AnOwnerInvitesRolesDifferAndADeviceIsShutOut()
    {
        await using Visit owner = await company.OwnerAsync("Harrow Fence");
        await using Visit foreman = await company.JoinAsync(owner, "foreman", "Sam Reed", 360, 740);
        await Assertions.Expect(foreman.Page.Locator("nav button")).ToHaveTextAsync(["Jobs", "Devices"]);
        await Assertions.Expect(foreman.Page.Locator("#company-name")).ToHaveTextAsync("Harrow Fence");
        Assert.Equal(0, await foreman.OverflowAsync());

        await company.GoAsync(owner.Page);
        await CompanySite.Button(owner.Page, "People").ClickAsync();
        await owner.Page.RunAndWaitForResponseAsync(() => owner.Page.GetByLabel("Role: Sam Reed").SelectOptionAsync("owner"), r => r.Request.Method == "PUT");
        await foreman.Page.ReloadAsync();
        await Assertions.Expect(foreman.Page.Locator("nav button")).ToHaveTextAsync(["Jobs", "People", "Devices", "Programs", "What was done"]);

        await CompanySite.Button(owner.Page, "Devices").ClickAsync();
        await owner.Page.Locator("tr", new() { HasText = "Sam Reed" }).GetByRole(AriaRole.Button, new() { Name = "Shut out" }).ClickAsync();
        await Assertions.Expect(owner.Page.Locator("tr", new() { HasText = "Sam Reed" })).ToHaveCountAsync(0);
        await foreman.Page.ReloadAsync();
        await Assertions.Expect(CompanySite.Region(foreman.Page, "Sign in")).ToBeVisibleAsync();
        await CompanySite.Button(owner.Page, "What was done").ClickAsync();
        await Assertions.Expect(owner.Page.Locator("tbody tr").First).ToContainTextAsync("device.shut-out");
        foreach (string part in new[] { "Jobs", "People", "Devices", "Programs", "What was done" })
        {
            await CompanySite.Button(owner.Page, part).ClickAsync();
            await Assertions.Expect(owner.Page.Locator("section").First).ToBeVisibleAsync();
            await owner.ShootAsync($"company-{part.Replace(' ', '-').ToLowerInvariant()}");
            AxeResult found = await owner.Page.RunAxe();
            Assert.True(found.Violations.Length == 0, $"{part}: {string.Join("; ", found.Violations.Select(v => v.Description + " " + string.Join(", ", v.Nodes.Select(n => n.Html))))}");
        }
    }

    [Fact]
    public async Task APasskeyMakesACompanyAndSignsInAgain()
    {
        await using Visit owner = await company.VisitAsync();
        ICDPSession browser = await owner.Context.NewCDPSessionAsync(owner.Page);
        await browser.SendAsync("WebAuthn.enable");
        await browser.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object> { ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true, ["hasUserVerification"] = true, ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true },
        });
        await company.GoAsync(owner.Page);
        ILocator form = CompanySite.Region(owner.Page, "Make the company");
        await form.GetByLabel("Name of the company").FillAsync("Keyed Fence");
        await form.GetByLabel("Your name").FillAsync("Ona Harrow");
        await form.GetByLabel("E-mail").FillAsync(CompanySite.NewEmail());
        await form.GetByRole(AriaRole.Button, new() { Name = "With a passkey instead" }).ClickAsync();
        await Assertions.Expect(owner.Page.Locator("#company-name")).ToHaveTextAsync("Keyed Fence");

        await CompanySite.Button(owner.Page, "Devices").ClickAsync();
        await CompanySite.Button(owner.Page, "Sign out").ClickAsync();
        await CompanySite.Region(owner.Page, "Sign in").GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Assertions.Expect(owner.Page.Locator("#company-name")).ToHaveTextAsync("Keyed Fence");
        Assert.Empty(owner.Troubles);
    }

    [Fact]
    public async Task TwoPeopleMeetOnOneJobAndAConflictIsSettledForBoth()
    {
        await using Visit office = await company.OwnerAsync("Harrow Fence");
        await using Visit phone = await company.JoinAsync(office, "foreman", "Sam Reed");
        await CompanySite.SendSampleAsync(office, "level yard");
        await company.OpenJobAsync(phone, "Juniper Flat");
        foreach ((Visit who, string length) in new[] { (phone, "92'"), (office, "93'") })
        {
            await who.GoAsync("Site");
            await who.Page.GetByLabel("Length 1", new() { Exact = true }).FillAsync(length);
            await who.Page.GetByLabel("Length 1", new() { Exact = true }).BlurAsync();
            await Assertions.Expect(who.Undo).ToBeEnabledAsync();
            await who.KeptAsync();
        }

        foreach (Visit who in new[] { phone, office })
        {
            await who.GoAsync("Field", "Hand over");
            await CompanySite.Button(who.Page, "Send and fetch now").ClickAsync();
            await CompanySite.CarriedAsync(who.Page, "together");
        }

        await Assertions.Expect(office.Page.Locator(".field-conflict").First).ToContainTextAsync("Two people changed this");
        await using Visit list = await company.VisitAsync();
        await company.GoAsync(phone.Page);
        ILocator row = phone.Page.Locator("tr[data-job]");
        await Assertions.Expect(row).ToHaveCountAsync(1);
        for (int tries = 0; tries < 40 && await row.Locator("td").Nth(5).InnerTextAsync() == "0"; tries++)
        {
            await phone.Page.WaitForTimeoutAsync(250);
            await phone.Page.ReloadAsync();
            await row.WaitForAsync();
        }

        Assert.NotEqual("0", await row.Locator("td").Nth(5).InnerTextAsync());
        await phone.ShootAsync("company-conflict");
        while (await office.Page.Locator(".field-conflict").CountAsync() is > 0 and var open)
        {
            await office.Page.Locator(".field-conflict").First.GetByRole(AriaRole.Button).First.ClickAsync();
            await Assertions.Expect(office.Page.Locator(".field-conflict")).ToHaveCountAsync(open - 1);
        }

        await CompanySite.Button(office.Page, "Send and fetch now").ClickAsync();
        await CompanySite.CarriedAsync(office.Page, "together");
        await company.OpenJobAsync(phone, "Juniper Flat");
        await phone.GoAsync("Field", "Hand over");
        await CompanySite.Button(phone.Page, "Send and fetch now").ClickAsync();
        await CompanySite.CarriedAsync(phone.Page, "together");
        await Assertions.Expect(phone.Page.Locator(".field-conflict")).ToHaveCountAsync(0);
        foreach (Visit who in new[] { phone, office }) await who.GoAsync("Site");
        string settled = await office.Page.GetByLabel("Length 1", new() { Exact = true }).InputValueAsync();
        await Assertions.Expect(phone.Page.GetByLabel("Length 1", new() { Exact = true })).ToHaveValueAsync(settled);
    }

    [Fact]
    public async Task APhoneThatWasOfflineSendsByItselfWhenItIsBack()
    {
        await using Visit office = await company.OwnerAsync("Harrow Fence");
        await using Visit phone = await company.JoinAsync(office, "crew", "Tom Vale", 360, 740);
        await CompanySite.SendSampleAsync(office, "level yard");
        await company.OpenJobAsync(phone, "Juniper Flat");
        await phone.GoAsync("Field", "Hand over");
        await CompanySite.CarriedAsync(phone.Page, "together");
        await phone.Context.SetOfflineAsync(true);
        await NoteAsync(phone, "gate post is leaning", 1);
        await NoteAsync(phone, "asked the owner about it", 2);
        await phone.SheetAsync("share");
        await CompanySite.CarriedAsync(phone.Page, "nosignal");
        await Assertions.Expect(phone.Page.Locator("[data-carrying]")).ToContainTextAsync("2 entries wait");
        await phone.ShootAsync("company-phone-offline");
        await phone.Context.SetOfflineAsync(false);
        await CompanySite.CarriedAsync(phone.Page, "together");

        await CompanySite.Button(office.Page, "Send and fetch now").ClickAsync();
        await Assertions.Expect(office.Page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", "2");
        await office.SheetAsync("book");
        await Assertions.Expect(office.Page.Locator("section[aria-label='Log']")).ToContainTextAsync("gate post is leaning");
    }

    [Fact]
    public async Task ALostSessionKeepsWhatWaitsAndTheCrewsChangeStaysWithItsReason()
    {
        await using Visit office = await company.OwnerAsync("Harrow Fence");
        await using Visit phone = await company.JoinAsync(office, "crew", "Tom Vale");
        await CompanySite.SendSampleAsync(office, "level yard");
        await company.OpenJobAsync(phone, "Juniper Flat");
        await phone.GoAsync("Site");
        await phone.Page.GetByLabel("Length 1", new() { Exact = true }).FillAsync("92'");
        await phone.Page.GetByLabel("Length 1", new() { Exact = true }).BlurAsync();
        await phone.KeptAsync();
        await phone.GoAsync("Field", "Hand over");
        await CompanySite.Button(phone.Page, "Send and fetch now").ClickAsync();
        await CompanySite.CarriedAsync(phone.Page, "refused");
        await Assertions.Expect(phone.Page.GetByText("A job is changed by a foreman, an estimator or an owner: the change stays on this device.")).ToBeVisibleAsync();

        await company.GoAsync(office.Page);
        await CompanySite.Button(office.Page, "Devices").ClickAsync();
        await office.Page.Locator("tr", new() { HasText = "Tom Vale" }).GetByRole(AriaRole.Button, new() { Name = "Shut out" }).ClickAsync();
        await Assertions.Expect(office.Page.Locator("tr", new() { HasText = "Tom Vale" })).ToHaveCountAsync(0);
        await NoteAsync(phone, "written after the session ended", 1);
        await phone.SheetAsync("share");
        await CompanySite.CarriedAsync(phone.Page, "signedout");
        await Assertions.Expect(phone.Page.Locator("[data-carrying]")).ToContainTextAsync("1 entry waits. Nothing is lost.");
        await phone.Page.ReloadAsync();
        await phone.GoAsync("Field");
        await Assertions.Expect(phone.Page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", "1");
    }

    [Fact]
    public async Task WhatOneCompanysDeviceKeptStaysWhenSomebodySignsInToAnother()
    {
        await using Visit device = await company.OwnerAsync("Harrow Fence");
        await CompanySite.SendSampleAsync(device, "level yard");
        await NoteAsync(device, "for Harrow only", 1);
        await device.SheetAsync("share");
        await CompanySite.CarriedAsync(device.Page, "together");
        await company.GoAsync(device.Page);
        await CompanySite.Button(device.Page, "Devices").ClickAsync();
        await CompanySite.Button(device.Page, "Sign out").ClickAsync();
        ILocator form = CompanySite.Region(device.Page, "Make the company");
        await form.GetByLabel("Name of the company").FillAsync("Briar Fence");
        await form.GetByLabel("Your name").FillAsync("Ada Briar");
        await form.GetByLabel("E-mail").FillAsync(CompanySite.NewEmail());
        await form.GetByLabel("Password").FillAsync(CompanySite.Password);
        await form.GetByRole(AriaRole.Button, new() { Name = "Make the company" }).ClickAsync();
        await Assertions.Expect(device.Page.Locator("#company-name")).ToHaveTextAsync("Briar Fence");

        await device.OpenAsync();
        await NoteAsync(device, "written later", 2);
        await device.SheetAsync("share");
        await CompanySite.Button(device.Page, "Send and fetch now").ClickAsync();
        await CompanySite.CarriedAsync(device.Page, "refused");
        await Assertions.Expect(device.Page.GetByText("belongs to another company than the one that is signed in")).ToBeVisibleAsync();
        await device.ShootAsync("company-another");
        await company.GoAsync(device.Page);
        await Assertions.Expect(CompanySite.Region(device.Page, "Jobs").First).ToBeVisibleAsync();
        await Assertions.Expect(device.Page.Locator("tr[data-job]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task ALinkShowsOnePaperAndAnotherCompanySeesNothing()
    {
        await using Visit owner = await company.OwnerAsync("Harrow Fence");
        await CompanySite.SendSampleAsync(owner, "level yard");
        await company.GoAsync(owner.Page);
        ILocator row = owner.Page.Locator("tr[data-job]", new() { HasText = "Juniper Flat" });
        await row.GetByRole(AriaRole.Button, new() { Name = "Share a paper" }).ClickAsync();
        await CompanySite.Button(owner.Page, "Make the link").ClickAsync();
        string address = await owner.Page.Locator("section.links a.token").EvaluateAsync<string>("link => link.href");
        await owner.ShootAsync("company-link");

        await using Visit other = await company.OwnerAsync("Curious Fence");
        await Assertions.Expect(other.Page.Locator("tr[data-job]")).ToHaveCountAsync(0);
        Assert.Equal(404, (await other.Context.APIRequest.GetAsync(new Uri(new Uri(address), "/api/jobs/juniper-flat").ToString())).Status);
        IAPIResponse paper = await other.Context.APIRequest.GetAsync(address);
        Assert.Equal("application/pdf", paper.Headers["content-type"]);
        Assert.True((await paper.BodyAsync()).AsSpan().StartsWith("%PDF-"u8));

        await row.GetByRole(AriaRole.Button, new() { Name = "Share a paper" }).ClickAsync();
        await owner.Page.Locator("section.links table").GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        await Assertions.Expect(owner.Page.Locator("section.links table").GetByRole(AriaRole.Button, new() { Name = "Withdraw" })).ToHaveCountAsync(0);
        IAPIResponse ended = await other.Context.APIRequest.GetAsync(address);
        Assert.Equal((404, true), (ended.Status, Encoding.UTF8.GetString(await ended.BodyAsync()).Contains("has expired or was withdrawn", StringComparison.Ordinal)));
    }

    private static async Task NoteAsync(Visit visit, string text, int kept)
    {
        await visit.GoAsync("Field");
        await visit.SheetAsync("book");
        await visit.Page.GetByLabel("Note", new() { Exact = true }).FillAsync(text);
        await CompanySite.Button(visit.Page, "Keep the note").ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{kept}");
    }
}
