namespace Tautline.Cli.Terminal;

/// <summary>Runs work that can be cancelled, and says on a terminal that it is going on once it takes over half a second.</summary>
internal static class Work
{
    private const int Pause = 500; // milliseconds

    /// <exception cref="OperationCanceledException">The user cancelled.</exception>
    public static T Run<T>(CliHost host, string doing, Func<T> work)
    {
        using var line = new ProgressLine(host);
        return Run(line, doing, work);
    }

    /// <summary>One of several pieces of work that share a line.</summary>
    /// <exception cref="OperationCanceledException">The user cancelled.</exception>
    public static T Run<T>(ProgressLine line, string doing, Func<T> work)
    {
        var task = Task.Run(work, line.Cancelled);
        do line.Show(doing);
        while (!Ended(task, line.Cancelled));
        return task.GetAwaiter().GetResult();
    }

    private static bool Ended(Task task, CancellationToken cancelled)
    {
        try
        {
            return task.Wait(Pause, cancelled);
        }
        catch (AggregateException)
        {
            return true; // the fault is thrown, unwrapped, where the result is taken
        }
    }
}
