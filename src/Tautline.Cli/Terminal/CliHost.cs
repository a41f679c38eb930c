namespace Tautline.Cli.Terminal;

/// <summary>What a command sees of the world outside: where data and messages go, and when to stop.</summary>
/// <param name="Output">Data.</param>
/// <param name="Error">Problems, hints, progress.</param>
/// <param name="OutputIsTerminal">False where the data goes to a file or another program: plain text, fixed width.</param>
/// <param name="ErrorIsTerminal">False where messages do.</param>
/// <param name="Colour">Colour may be used where a stream is a terminal. Nothing is told by colour alone.</param>
/// <param name="Width">Columns of the terminal.</param>
public sealed record CliHost(
    TextWriter Output, TextWriter Error, bool OutputIsTerminal, bool ErrorIsTerminal, bool Colour, int Width, CancellationToken Cancelled)
{
    /// <summary>Width of text that is not for a terminal.</summary>
    public const int PlainWidth = 110;

    private const int NarrowestWidth = 60;

    /// <summary>The machine's clock and time zone. No plan depends on it: only what is asked about a day does.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    public static CliHost OfProcess(TextWriter output, TextWriter error, CancellationToken cancelled)
    {
        var colour = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && Environment.GetEnvironmentVariable("TERM") != "dumb";
        return new(
            output, error, !Console.IsOutputRedirected, !Console.IsErrorRedirected, colour,
            Console.IsOutputRedirected ? PlainWidth : Math.Max(NarrowestWidth, Console.WindowWidth), cancelled);
    }
}
