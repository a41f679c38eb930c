namespace Tautline.Engine.Site.TapeBook;

/// <summary>Finds the known word that was most likely meant.</summary>
internal static class Spelling
{
    private const int LongestWord = 24;

    /// <summary>The nearest known word, at most one slip for every three letters away; null where none is near.</summary>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        if (word.Length > LongestWord) return null;
        var lower = word.ToLowerInvariant();
        var (best, least) = ((string?)null, Math.Max(1, lower.Length / 3) + 1);
        foreach (var candidate in known)
        {
            var slips = Slips(lower, candidate.ToLowerInvariant());
            if (slips < least) (best, least) = (candidate, slips);
        }
        return best;
    }

    /// <summary>'Did you mean', or the list of what is known.</summary>
    public static string Hint(string word, IReadOnlyCollection<string> known)
        => Nearest(word, known) is { } near ? $"Did you mean '{near}'?" : $"Known are: {string.Join(", ", known)}.";

    /// <summary>Letters to put in, take out, change, or swap with their neighbour.</summary>
    private static int Slips(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
            for (var j = 1; j <= b.Length; j++)
            {
                var change = rows[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                rows[i, j] = Math.Min(change, Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        return rows[a.Length, b.Length];
    }
}
