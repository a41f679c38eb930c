using System.Text;
using Tautline.Formats.Import;
using Tautline.Formats.Sites;

namespace Tautline.Formats.Tests.Sites;

/// <summary>Reads shared files and texts as site files.</summary>
internal static class SiteData
{
    public static SiteFile Shared(string path)
    {
        var bytes = SharedData.Read(path);
        return SiteReader.Read(bytes, new() { SourceName = Path.GetFileName(path) }, ending => Beside(path, ending));
    }

    public static SiteFile Text(string text, string name = "file", SiteOptions? options = null) =>
        SiteReader.Read(Encoding.UTF8.GetBytes(text), (options ?? new()) with { SourceName = name });

    public static IEnumerable<SiteFeature> Lines(this SiteFile file) => file.Features.Where(f => !f.IsPoint);

    public static IEnumerable<SiteFeature> Points(this SiteFile file) => file.Features.Where(f => f.IsPoint);

    public static int Read(this SiteFile file, string kind) => file.Counts.Where(c => c.Kind == kind).Sum(c => c.Read);

    public static int Skipped(this SiteFile file, string kind) => file.Counts.Where(c => c.Kind == kind).Sum(c => c.Skipped);

    public static IEnumerable<string> Codes(this SiteFile file) => file.Problems.Select(p => p.Code);

    public static ImportProblem Problem(this SiteFile file, string code) => Assert.Single(file.Problems, p => p.Code == code);

    private static FileStream? Beside(string path, string ending)
    {
        var file = Path.ChangeExtension(SharedData.PathOf(path), ending);
        return File.Exists(file) ? File.OpenRead(file) : null;
    }
}
