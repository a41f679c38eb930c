using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Tautline.Desk.Map;
using Tautline.Formats.Coordinates;

namespace Tautline.Web.Parts;

/// <summary>What lies under the drawing: chosen, faded, fitted, taken away. It is kept in the browser beside the job and is no part of it.</summary>
public partial class UnderlayMenu
{
    private const long LargestBytes = 80L << 20;

    private string address = "", name = "", fault = "", loaded = "";
    private (string Name, byte[] Bytes) pdf = ("", []);
    private int turned = 1, pages;

    /// <summary>What a page of a PDF is drawn as.</summary>
    private sealed record PdfPicture(int Pages, int Page, string Wrong, byte[] Picture);

    /// <summary>The scripts' map; nothing until it is drawn.</summary>
    [Parameter]
    public IJSObjectReference? Map { get; set; }

    private string Job => Session.Job.Id.Value;

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (Map is null || !Session.HasJob || loaded == Job) return;
        loaded = Job;
        (name, pdf, pages) = (await Map.InvokeAsync<string>("loadUnderlay", Job), ("", []), 0);
        StateHasChanged();
    }

    private async Task TakeAsync(InputFileChangeEventArgs chosen)
    {
        (fault, IReadOnlyList<IBrowserFile> files) = ("", chosen.GetMultipleFiles(2));
        IBrowserFile? picture = files.FirstOrDefault(f => !IsWorld(f.Name));
        if (Map is null || picture is null) return;
        if (picture.Size > LargestBytes)
        {
            fault = Say.Say("map.underlayLarge", ("n", LargestBytes >> 20));
            return;
        }

        if (IsPdf(picture))
        {
            pdf = (picture.Name, await BytesAsync(picture));
            await PageAsync(1);
            return;
        }

        pages = 0;
        double[]? world = files.FirstOrDefault(f => IsWorld(f.Name)) is { } text ? await WorldAsync(text) : null;
        if (fault.Length > 0) return;
        string wrong = await Map.InvokeAsync<string>("layImage", Job, picture.Name, await BytesAsync(picture), picture.ContentType, world);
        if (wrong.Length > 0) fault = Say.Say("map.underlayUnread", ("name", picture.Name));
        else name = picture.Name;
    }

    private static bool IsPdf(IBrowserFile file) => file.ContentType == "application/pdf" || file.Name.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase);

    private Task TurnToAsync(ChangeEventArgs to)
        => int.TryParse(Convert.ToString(to.Value, CultureInfo.InvariantCulture), NumberStyles.None, CultureInfo.InvariantCulture, out int wanted) ? PageAsync(wanted) : Task.CompletedTask;

    /// <summary>Draws a page of the PDF that was chosen and lays it down as a picture; two points then give it its scale.</summary>
    private async Task PageAsync(int wanted)
    {
        PdfPicture drawn;
        await using (IJSObjectReference reader = await Browser.InvokeAsync<IJSObjectReference>("import", "./scripts/pdf.mjs"))
            drawn = await reader.InvokeAsync<PdfPicture>("drawPage", pdf.Bytes, wanted);
        string wrong = drawn.Wrong.Length > 0 ? drawn.Wrong : await Map!.InvokeAsync<string>("layImage", Job, pdf.Name, drawn.Picture, "image/png", null);
        if (wrong.Length > 0) fault = Say.Say(wrong switch { "locked" => "map.underlayLocked", "large" => "map.underlayNoRoom", _ => "map.underlayNoPdf" }, ("name", pdf.Name));
        else (name, turned, pages, fault) = (pdf.Name, drawn.Page, drawn.Pages, "");
    }

    /// <summary>The six figures of a world file, brought to the job's metres.</summary>
    private async Task<double[]?> WorldAsync(IBrowserFile file)
    {
        string[] words = System.Text.Encoding.UTF8.GetString(await BytesAsync(file)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var figures = words.Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out double figure) ? figure : double.NaN).ToList();
        if (figures.Count == 6 && figures.TrueForAll(double.IsFinite) && JobOnMap.Local(Session.Job.Coordinates, figures[4], figures[5]) is var (east, north, scale))
            return [figures[0] * scale, figures[1] * scale, figures[2] * scale, figures[3] * scale, east, north];
        fault = Say.Say("map.underlayWorld", ("name", file.Name));
        return null;
    }

    private static bool IsWorld(string fileName) => Path.GetExtension(fileName).ToLowerInvariant() is ".pgw" or ".jgw" or ".tfw" or ".wld";

    private static async Task<byte[]> BytesAsync(IBrowserFile file)
    {
        using Stream stream = file.OpenReadStream(LargestBytes);
        using var all = new MemoryStream();
        await stream.CopyToAsync(all);
        return all.ToArray();
    }

    private async Task TilesAsync()
    {
        fault = "";
        double[] middle = MapSight.Middle(Session.Job);
        if (!Uri.TryCreate(address.Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal), UriKind.Absolute, out _)
            || !address.Contains("{z}", StringComparison.Ordinal) || !address.Contains("{x}", StringComparison.Ordinal) || !address.Contains("{y}", StringComparison.Ordinal))
            fault = Say["map.underlayAddress"];
        else if (JobOnMap.Of(Session.Job.Coordinates, middle[0], middle[1]) is not { } figures) fault = Say["map.underlayNoSystem"];
        else
        {
            await DoAsync("layTiles", Job, address, figures);
            name = address;
        }
    }

    private Task FadeAsync(ChangeEventArgs to) => DoAsync("fadeUnderlay", Convert.ToDouble(to.Value, CultureInfo.InvariantCulture) / 100);

    private async Task RemoveAsync()
    {
        await DoAsync("removeUnderlay", Job);
        (name, pdf, pages) = ("", ("", []), 0);
    }

    private async Task DoAsync(string what, params object?[] with)
    {
        if (Map is not null) await Map.InvokeVoidAsync(what, with);
    }
}
