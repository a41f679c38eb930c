using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Tautline.Web;
using Tautline.Web.Desk;

WebAssemblyHostBuilder builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<DeskPage>("#app");
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<Session>();
builder.Services.AddSingleton<Front>();
builder.Services.AddSingleton<Look>();
builder.Services.AddSingleton<Shelf>();
builder.Services.AddSingleton<Keeper>();
builder.Services.AddSingleton<BrowserFiles>();
builder.Services.AddSingleton<BrowserPage>();
builder.Services.AddSingleton<Late>();
builder.Services.AddSingleton<Doings>();
builder.Services.AddSingleton<PaperDesk>();
await builder.Build().RunAsync();
