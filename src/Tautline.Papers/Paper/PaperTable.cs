namespace Tautline.Papers.Paper;

/// <summary>A table: a caption, columns, and rows with exactly one text per column. Where it breaks, caption and heads are repeated.</summary>
public sealed record PaperTable : PaperBlock
{
    /// <summary>More columns than this cannot be read on upright paper.</summary>
    public const int MostColumns = 14;

    /// <exception cref="ArgumentException">No column, more than <see cref="MostColumns"/>, or a row of another length.</exception>
    public PaperTable(string caption, IReadOnlyList<PaperColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        if (columns.Count is 0 or > MostColumns)
            throw new ArgumentException($"A table has 1 to {MostColumns} columns; '{caption}' has {columns.Count}.", nameof(columns));
        for (int i = 0; i < rows.Count; i++)
        {
            if (rows[i].Count != columns.Count)
                throw new ArgumentException($"Row {i + 1} of '{caption}' has {rows[i].Count} texts for {columns.Count} columns.", nameof(rows));
        }

        Caption = caption;
        Columns = columns;
        Rows = rows;
    }

    /// <summary>What the table shows; printed over it. May be empty.</summary>
    public string Caption { get; }

    public IReadOnlyList<PaperColumn> Columns { get; }

    public IReadOnlyList<IReadOnlyList<string>> Rows { get; }
}
