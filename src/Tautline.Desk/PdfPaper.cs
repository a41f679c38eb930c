using System.Globalization;
using System.Security.Cryptography;
using Tautline.Documents.Paper;
using Tautline.Papers.Paper;

namespace Tautline.Desk;

/// <summary>A PDF that was made, and what to say about it.</summary>
public sealed record PdfPaper(string FileName, PrintedPaper Printed, double Milliseconds)
{
    public string Sha256 { get; } = Convert.ToHexStringLower(SHA256.HashData(Printed.Pdf));

    public string LengthText => Printed.Pdf.Length.ToString("#,0", CultureInfo.InvariantCulture) + " bytes";

    public string TimeText => Milliseconds.ToString("0", CultureInfo.InvariantCulture) + " ms";

    /// <summary>Signs that the typeface lacks; empty where it has all of them.</summary>
    public string Missing => Printed.UnknownCharacters;
}
