using Tautline.Cli.Terminal;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>What one device handed over: an exchange file, by itself or in a ZIP with its photos.</summary>
/// <param name="Path">As the user named it.</param>
/// <param name="Photos">SHA-256 of each photo by the name it has in the ZIP, in ordinal order; what it really is shows when it is read.</param>
internal sealed record FieldFile(string Path, Exchange Exchange, bool IsZip, IReadOnlyList<string> Photos)
{
    /// <summary>Each photo that an entry names, once, in the order of the entries.</summary>
    public IReadOnlyList<string> PhotosNamed => [.. Exchange.Log.SelectMany(e => e.Photos ?? []).Select(p => p.Sha256).Distinct()];
}

/// <param name="File">Nothing where the file as a whole cannot be used; then nothing of it is.</param>
/// <param name="Exit">Whether all of it could be used.</param>
internal sealed record FieldReading(FieldFile? File, IReadOnlyList<Finding> Findings, ExitCode Exit);
