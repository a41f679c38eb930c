using System.IO.Compression;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace Tautline.Papers.Paper;

/// <summary>Writes tables as Office Open XML (XLSX, ECMA-376). The same book gives the same bytes: no clock gets in.</summary>
public static class XlsxWriter
{
    /// <summary>The earliest time a ZIP file can state.</summary>
    private static readonly DateTimeOffset noTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static async Task<byte[]> WriteAsync(SheetBook book)
    {
        using var file = new MemoryStream();
        await using (Spreadsheet sheet = await Spreadsheet.CreateNewAsync(file, new SpreadCheetahOptions { DocumentProperties = null }))
        {
            StyleId bold = sheet.AddStyle(new Style { Font = { Bold = true } });
            Dictionary<int, StyleId> numbers = book.Sheets.SelectMany(s => s.Columns).Select(c => c.Decimals).Distinct()
                .ToDictionary(d => d, d => sheet.AddStyle(new Style { Format = NumberFormat.Custom(d == 0 ? "#,##0" : "#,##0." + new string('0', d)) }));
            foreach (BookSheet one in book.Sheets) await WriteAsync(sheet, one, bold, numbers);
            await sheet.FinishAsync();
        }

        return Settled(file.ToArray());
    }

    private static async Task WriteAsync(Spreadsheet sheet, BookSheet one, StyleId bold, Dictionary<int, StyleId> numbers)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        foreach ((int i, BookColumn column) in one.Columns.Index()) options.Column(i + 1).Width = column.Width;
        await sheet.StartWorksheetAsync(one.Name, options);
        await sheet.AddRowAsync([.. one.Columns.Select(c => new StyledCell(c.Header, bold))]);
        foreach (IReadOnlyList<object?> row in one.Rows)
            await sheet.AddRowAsync([.. row.Select((value, i) => CellOf(value, numbers[one.Columns[i].Decimals]))]);
    }

    private static StyledCell CellOf(object? value, StyleId number) => value switch
    {
        null => new StyledCell((string?)null, null),
        int whole => new StyledCell(whole, number),
        double real => new StyledCell(Math.Round(real, 9), number), // a nanometre: what a unit leaves in the last bits is no figure
        _ => new StyledCell(value.ToString(), null),
    };

    /// <summary>The same parts in the same order, each at the same time.</summary>
    private static byte[] Settled(byte[] written)
    {
        using var settled = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(written), ZipArchiveMode.Read))
        using (var to = new ZipArchive(settled, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in from.Entries)
            {
                ZipArchiveEntry copy = to.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = noTime;
                using Stream source = entry.Open(), target = copy.Open();
                source.CopyTo(target);
            }
        }

        return settled.ToArray();
    }
}
