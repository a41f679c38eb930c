using Tautline.Engine.Problems;

namespace Tautline.Web.Desk;

/// <summary>Something a person should know, in words, with its place in the file.</summary>
public sealed record Finding(Severity Severity, string Where, string Message, string Hint)
{
    public static Finding Error(string where, string message, string hint) => new(Severity.Error, where, message, hint);
}
