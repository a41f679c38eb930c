using System.Text;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Makes ids people can read from names: the same book always gets the same ids.</summary>
internal sealed class TapeIds
{
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);

    /// <summary>Keeps words from being made into ids.</summary>
    public TapeIds(params ReadOnlySpan<string> reserved)
    {
        foreach (var word in reserved) taken.Add(word);
    }

    /// <summary>An id not given before: the name in small letters, with a number behind it where that is taken.</summary>
    public string Make(string name, string otherwise)
    {
        var plain = Slug(name) is { Length: > 0 } slug ? slug : otherwise;
        var id = plain;
        for (var i = 2; !taken.Add(id); i++) id = $"{plain}-{i}";
        return id;
    }

    /// <summary>Letters and digits in small letters, everything else as single hyphens.</summary>
    public static string Slug(string name)
    {
        var slug = new StringBuilder(name.Length);
        foreach (var letter in name.ToLowerInvariant())
            if (char.IsLetterOrDigit(letter)) slug.Append(letter);
            else if (slug.Length > 0 && slug[^1] != '-') slug.Append('-');
        return slug.ToString().TrimEnd('-');
    }
}
