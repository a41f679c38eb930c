using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Tautline.Web;
using Tautline.Web.Desk;

WebAssemblyHostBuilder builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<DeskPage>("#app");
builder.Services.AddSingleton<JobDesk>();
builder.Services.AddScoped<BrowserFiles>();
await builder.Build().RunAsync();
