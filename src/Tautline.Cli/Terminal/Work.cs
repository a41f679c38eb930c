using System.Diagnostics;
using System.Globalization;

namespace Tautline.Cli.Terminal;

/// <summary>Runs work that can be cancelled, and says on a terminal that it is going on once it takes over half a second.</summary>
internal static class Work
{
    private static readonly TimeSpan quiet = TimeSpan.FromMilliseconds(500);

    /// <exception cref="OperationCanceledException">The user cancelled.</exception>
    public static T Run<T>(CliHost host, string doing, Func<T> work)
    {
        var started = Stopwatch.StartNew();
        var task = Task.Run(work, host.Cancelled);
        var shown = "";
        while (!Ended(task, host.Cancelled))
            if (host.ErrorIsTerminal) shown = Show(host, doing, started.Elapsed);
        if (shown.Length > 0) host.Error.Write($"\r{new string(' ', shown.Length)}\r");
        return task.GetAwaiter().GetResult();
    }

    private static bool Ended(Task task, CancellationToken cancelled)
    {
        try
        {
            return task.Wait((int)quiet.TotalMilliseconds, cancelled);
        }
        catch (AggregateException)
        {
            return true; // the fault is thrown, unwrapped, where the result is taken
        }
    }

    private static string Show(CliHost host, string doing, TimeSpan elapsed)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"{doing}, {elapsed.TotalSeconds:0} s");
        host.Error.Write($"\r{text}");
        return text;
    }
}
