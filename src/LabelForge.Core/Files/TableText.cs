using CsvHelper;
using LabelForge.Measures;

namespace LabelForge.Recipes.Files;

/// <summary>Reads the text of a table: commas or another sign between cells, quotation marks as in RFC 4180.</summary>
public static class TableText
{
    /// <summary>Its rows that hold anything, the heading among them.</summary>
    /// <param name="file">How messages name it.</param>
    /// <param name="separator">What stands between cells.</param>
    /// <param name="unclosed">The code of the problem where a quotation mark does not close.</param>
    /// <exception cref="InputException">A quotation mark does not close, or stands inside a cell.</exception>
    public static ImmutableArray<CompiledRow> Rows(string text, string file, char separator = ',',
        string unclosed = "table.quotation-mark")
    {
        using var reader = new StringReader(text.TrimStart('\uFEFF').ReplaceLineEndings("\n"));
        using var csv = CsvReader.Create(reader, new CsvReaderOptions
        {
            Separator = separator,
            HasHeader = false,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Throw,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
        }, leaveOpen: true);
        var rows = ImmutableArray.CreateBuilder<CompiledRow>();
        try
        {
            while (csv.Read())
            {
                ImmutableArray<string> cells = [.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i).Trim())];
                if (cells.Any(c => c.Length > 0))
                    rows.Add(new CompiledRow((int)csv.LineNumber, cells));
            }
        }
        catch (CsvFormatException e)
        {
            throw new InputException(file, (int)e.LineNumber, unclosed);
        }
        return rows.ToImmutable();
    }
}
