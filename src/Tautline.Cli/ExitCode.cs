namespace Tautline.Cli;

/// <summary>What the program tells the shell. The same list stands in every help text.</summary>
public enum ExitCode
{
    Fine = 0,
    Problems = 1,
    Usage = 2,
    Unreadable = 3,
    Fault = 4,
    Cancelled = 130,
}

internal static class ExitCodes
{
    public static string Meaning(ExitCode code) => code switch
    {
        ExitCode.Fine => "fine",
        ExitCode.Problems => "the job has errors: there is no plan, only their report; or part of a field file is damaged and was left out",
        ExitCode.Usage => "the command line is wrong, or a file would be overwritten",
        ExitCode.Unreadable => "a file cannot be read or written",
        ExitCode.Fault => "a fault inside the program",
        ExitCode.Cancelled => "cancelled",
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "an exit code without a meaning"),
    };
}
