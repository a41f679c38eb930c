using System.Text;
using System.Text.Json;
using Microsoft.JSInterop;
using Tautline.Desk;
using Tautline.Engine.Jobs;
using Tautline.Field.Merging;

namespace Tautline.FieldScreens;

/// <summary>Sharing the job with the company through its server: what came is taken in like another device's file, then what the server lacks is sent.</summary>
public sealed partial class FieldDesk
{
    private static readonly TimeSpan soon = TimeSpan.FromSeconds(2);

    private int asked;
    private bool underWay;

    /// <summary>How the job stands with the company's server.</summary>
    public Carrying Carrying { get; private set; }

    /// <summary>Entries the server does not have.</summary>
    public int ToCarry { get; private set; }

    /// <summary>What the server did not take, with its reason; it stays on this device.</summary>
    public IReadOnlyList<RefusedPiece> NotTaken { get; private set; } = [];

    /// <summary>What the server said, where it refused the whole.</summary>
    public string CarryWords { get; private set; } = "";

    /// <summary>The job is the company's from now on.</summary>
    public async Task ShareWithCompanyAsync()
    {
        await carry.ShareAsync(job);
        Carrying = Carrying.NoSignal;
        await CarryAsync();
    }

    /// <summary>Brings this device and the server to the same, as far as they can. While the server is waited for, everything else goes on.</summary>
    public async Task CarryAsync()
    {
        if (underWay || session.ReadOnly) return;
        underWay = true;
        try
        {
            if (Carrying == Carrying.Alone && !await carry.IsSharedAsync(job)) return;
            (Carrying, CarryWords) = (await ExchangeAsync(), "");
            await carry.PushOthersAsync(job);
        }
        catch (CarryException fault)
        {
            (Carrying, CarryWords) = (fault.State, fault.Message);
        }
        catch (ShelfException fault)
        {
            (Trouble, TroubleIsRoom) = (fault.Message, fault.Full);
        }
        finally
        {
            underWay = false;
        }
        ToCarry = await carry.WaitingAsync(job);
        changed();
    }

    private async Task<Carrying> ExchangeAsync()
    {
        string[] pages = await carry.PullAsync(job);
        bool kept = pages.Length == 0;
        if (!kept) await DoAsync(async () => kept = await TakeInAsync(Exchanged(pages, (await SharedAsync()).Roots.First())));
        // Somebody is at work on the desk just now, or it could not be taken: the next time.
        if (!kept) return Carrying.NoSignal;
        await carry.TakenAsync();
        string? lines = null;
        // This device's own edits are written down before they go: sent twice they must be the same.
        await DoAsync(async () =>
        {
            SharedJob shared = await SharedAsync();
            await KeepAsync(session.Job, shared, []);
            lines = Lines(shared);
        });
        if (lines is null) return Carrying.NoSignal;
        // What is entered while this goes out waits for the next time.
        long last = LastOwn;
        NotTaken = (await carry.PushAsync(job, lines)).Refused;
        if (await carry.PhotosAsync(job) > 0) PhotosHere = await photos.KeptAsync(job);
        if (NotTaken.All(r => r.Kind != "entry")) await HandedOverAsync(last);
        return NotTaken.Count > 0 ? Carrying.Refused : Carrying.Together;
    }

    /// <summary>The server's pages as a file of one device for another; such a file has a text the job began from.</summary>
    private static byte[] Exchanged(string[] pages, Job root)
    {
        Dictionary<string, List<string>> parts = new(StringComparer.Ordinal) { ["root"] = [], ["change"] = [], ["entry"] = [] };
        foreach (string page in pages)
        {
            using JsonDocument read = JsonDocument.Parse(page);
            foreach (JsonElement item in read.RootElement.GetProperty("items").EnumerateArray())
                if (parts.TryGetValue(item.GetProperty("kind").GetString()!, out List<string>? part)) part.Add(item.GetProperty("body").GetRawText());
        }
        if (parts["root"].Count == 0) parts["root"].Add(Line(root));
        return Encoding.UTF8.GetBytes(
            $$"""{"format":"{{ExchangeFile.FormatName}}","version":{{ExchangeFile.CurrentVersion}},"job":{{JsonSerializer.Serialize(root.Id.Value, CarryJson.Default.String)}},"roots":[{{string.Join(',', parts["root"])}}],"changes":[{{string.Join(',', parts["change"])}}],"log":[{{string.Join(',', parts["entry"])}}]}""");
    }

    /// <summary>Asked by the browser when it is worth trying.</summary>
    /// <returns>False where it should be tried less often.</returns>
    [JSInvokable]
    public async Task<bool> CarryNow()
    {
        if (Carrying is Carrying.Unknown or Carrying.Alone || !session.HasJob || session.Job.Id.Value != job || session.Planning) return true;
        await CarryAsync();
        return Carrying is Carrying.Together or Carrying.Refused;
    }

    private async Task BeginCarryingAsync()
    {
        try
        {
            Carrying = await carry.IsSharedAsync(job) ? Carrying.NoSignal : Carrying.Alone;
            ToCarry = await carry.WaitingAsync(job);
            await carry.WatchAsync(DotNetObjectReference.Create(this));
            if (Carrying != Carrying.Alone) Later();
        }
        catch (ShelfException)
        {
            // Without a shelf nothing is kept and nothing shared; the page says so elsewhere.
        }
    }

    /// <summary>A little later, so that several entries go together.</summary>
    private async void Later()
    {
        if (Carrying is Carrying.Unknown or Carrying.Alone) return;
        int mine = ++asked;
        await Task.Delay(soon, clock);
        if (mine == asked) await CarryNow();
    }

    private static string Lines(SharedJob shared)
    {
        var lines = new StringBuilder();
        foreach (Job root in shared.Roots) lines.Append("root\t").Append(Line(root)).Append('\n');
        foreach (JobChange change in shared.Changes) lines.Append("change\t").Append(ExchangeText.Of(change)).Append('\n');
        return lines.ToString();
    }

    private static string Line(Job root) => Canonical.Text(JsonDocument.Parse(JobFile.Write(root)).RootElement);
}
