using System.Diagnostics;
using System.Globalization;

namespace Tautline.Cli.Terminal;

/// <summary>One line on a terminal that says what is going on, once it takes over half a second; gone when the work is.</summary>
internal sealed class ProgressLine(CliHost host) : IDisposable
{
    private const int Widest = 79;

    private static readonly TimeSpan quiet = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan redraw = TimeSpan.FromMilliseconds(100);

    private readonly Stopwatch started = Stopwatch.StartNew();
    private TimeSpan drawn = -redraw;
    private int width;

    public CancellationToken Cancelled => host.Cancelled;

    public void Show(string doing)
    {
        var now = started.Elapsed;
        if (!host.ErrorIsTerminal || now < quiet || now - drawn < redraw) return;
        var text = Fitted(doing, string.Create(CultureInfo.InvariantCulture, $", {now.TotalSeconds:0} s"));
        host.Error.Write($"\r{text.PadRight(width)}");
        (drawn, width) = (now, Math.Max(width, text.Length));
    }

    /// <summary>Wipes the line, so that a message can stand in its place.</summary>
    public void Clear()
    {
        if (width > 0) host.Error.Write($"\r{new string(' ', width)}\r");
        width = 0;
    }

    public void Dispose() => Clear();

    /// <summary>A line that wraps could not be wiped.</summary>
    private string Fitted(string doing, string seconds)
    {
        var room = Math.Min(host.Width - 1, Widest) - seconds.Length;
        return (doing.Length <= room ? doing : doing[..(room - 3)] + "...") + seconds;
    }
}
