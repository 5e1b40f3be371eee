using CsvHelper;
using LabelForge.Measures;

namespace LabelForge.Recipes.Files;

/// <summary>Reads the text of a table of ours: commas between cells, quotation marks as in RFC 4180.</summary>
public static class TableText
{
    /// <summary>Its rows that hold anything, the heading among them.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">How messages name it.</param>
    /// <exception cref="InputException">A quotation mark does not close, or stands inside a cell.</exception>
    public static ImmutableArray<CompiledRow> Rows(string text, string file)
    {
        using var reader = new StringReader(text.TrimStart('\uFEFF').ReplaceLineEndings("\n"));
        using var csv = CsvReader.Create(reader, new CsvReaderOptions
        {
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
            throw new InputException(file, (int)e.LineNumber, "table.quotation-mark");
        }
        return rows.ToImmutable();
    }
}
