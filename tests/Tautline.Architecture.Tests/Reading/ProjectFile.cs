using System.Xml.Linq;

namespace Tautline.Architecture.Tests.Reading;

/// <summary>What a csproj says about what it needs.</summary>
/// <param name="Path">Relative to the repository root.</param>
/// <param name="Assembly">Name of the assembly it builds: its own, unless it says another.</param>
/// <param name="References">Names of the projects it references, wildcards kept as written.</param>
/// <param name="VersionsWritten">Package items that carry a version of their own.</param>
internal sealed record ProjectFile(
    string Path, string Assembly, IReadOnlyList<string> References, IReadOnlyList<string> Packages, IReadOnlyList<string> VersionsWritten)
{
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public bool IsSource => Path.StartsWith("src/", StringComparison.Ordinal);

    public static IReadOnlyList<ProjectFile> All() =>
        [.. Repository.Files("", ".csproj").Select(f => Parse(f, Repository.Read(f)))];

    public static ProjectFile Parse(string path, string xml)
    {
        var items = XDocument.Parse(xml).Descendants().ToList();
        var packages = items.Where(i => i.Name.LocalName is "PackageReference" or "PackageVersion").ToList();
        return new(
            path,
            items.LastOrDefault(i => i.Name.LocalName == "AssemblyName")?.Value ?? ProjectName(path),
            [.. Includes(items, "ProjectReference").Select(ProjectName)],
            [.. Includes(items, "PackageReference")],
            [.. packages.Where(HasVersion).Select(p => p.Attribute("Include")?.Value ?? p.Attribute("Update")?.Value ?? "?")]);
    }

    private static IEnumerable<string> Includes(IEnumerable<XElement> items, string kind) => items
        .Where(i => i.Name.LocalName == kind)
        .SelectMany(i => (i.Attribute("Include")?.Value ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));

    private static string ProjectName(string include) => System.IO.Path.GetFileNameWithoutExtension(include.Replace('\\', '/'));

    private static bool HasVersion(XElement package) =>
        package.Attributes().Select(a => a.Name.LocalName)
            .Concat(package.Elements().Select(e => e.Name.LocalName))
            .Any(n => n is "Version" or "VersionOverride");
}
