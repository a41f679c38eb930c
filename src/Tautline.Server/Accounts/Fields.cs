using System.Net.Mail;

namespace Tautline.Server.Accounts;

/// <summary>What people enter about themselves.</summary>
internal static class Fields
{
    private const int LongestName = 100;
    private const int LongestEmail = 200;

    /// <summary>Without what stands around it; nothing where it is no name.</summary>
    public static string? Name(string? text) => text?.Trim() is { Length: > 0 and <= LongestName } name && !name.Any(char.IsControl) ? name : null;

    public static string? Email(string? text) => text?.Trim() is { Length: > 0 and <= LongestEmail } email && MailAddress.TryCreate(email, out var read) && read.Address == email ? email : null;
}
