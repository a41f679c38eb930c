using System.Globalization;
using System.Security.Cryptography;
using Tautline.Documents.Paper;
using Tautline.Engine.Plans;

namespace Tautline.Web.Desk;

/// <summary>A PDF that was made, and what to say about it.</summary>
public sealed record PdfPaper(string FileName, PrintedPage Page, double Milliseconds)
{
    public string Sha256 { get; } = Convert.ToHexStringLower(SHA256.HashData(Page.Pdf));

    public string LengthText => Page.Pdf.Length.ToString("#,0", CultureInfo.InvariantCulture) + " bytes";

    public string TimeText => Milliseconds.ToString("0", CultureInfo.InvariantCulture) + " ms";

    /// <summary>What of the plan is not on the paper; empty where all of it is.</summary>
    public string Missing => Page.LinesNotPrinted == 0 ? "" : $"{PlanWords.Count(Page.LinesNotPrinted, "line")} found no room on the page; it says so.";
}
