using CsvHelper;

namespace LabelForge.Ingredients.Supplied;

/// <summary>Reads a supplier's list from a table with a column of names and, if the supplier gives them, a column of shares.</summary>
public static class CsvDeclaration
{
    private static readonly string[] NameHeadings = ["name", "ingredient", "ingredients", "inci", "inci name", "constituent"];
    private static readonly string[] ShareHeadings = ["share", "share %", "percent", "percentage", "%", "% w/w", "concentration",
        "concentration %"];

    /// <summary>Reads a table; its first row names the columns. Further columns are passed over.</summary>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="text">Its text, comma or semicolon between cells.</param>
    /// <param name="knows">Whether a text is a known name as it stands.</param>
    /// <exception cref="InputException">A column is missing, a share cannot be read, or no name
    /// stands in it; the message names the line.</exception>
    public static SuppliedList Read(string file, string text, Func<string, bool> knows)
    {
        var rows = Rows(file, text);
        if (rows.Count == 0)
            throw new InputException(file, 0, "supplied.table-empty");
        var heading = rows[0].Cells.Select(c => c.Trim().ToLowerInvariant()).ToList();
        var (name, share) = (heading.FindIndex(NameHeadings.Contains), heading.FindIndex(ShareHeadings.Contains));
        if (name < 0)
            throw new InputException(file, rows[0].Line, "supplied.no-name-column", ("list", string.Join(',', rows[0].Cells)));
        var none = new Footnotes("", []);
        var names = ImmutableArray.CreateBuilder<SuppliedName>();
        foreach (var (cells, line) in rows.Skip(1).Where(r => r.Cells.Any(c => c.Trim().Length > 0)))
        {
            if (name >= cells.Length || cells[name].Trim().Length == 0)
                throw new InputException(file, line, "supplied.row-no-name");
            try
            {
                var read = SuppliedText.NameOf(PaperText.Of(cells[name]).TrimStart(PaperText.Parting, '\n'), names.Count + 1, false, none,
                    knows)
                    ?? throw new InputException("supplied.no-name", ("cell", cells[name]));
                var said = share >= 0 && share < cells.Length ? cells[share].Trim() : "";
                names.Add(said.Length == 0 ? read : WithShare(read, said, heading[share]));
            }
            catch (InputException e) when (e.Problem.File is null)
            {
                throw new InputException(e.Problem.At(file, line));
            }
        }
        return names.Count > 0
            ? new SuppliedList(names.ToImmutable(), [])
            : throw new InputException(file, 0, "supplied.only-heading");
    }

    private static SuppliedName WithShare(SuppliedName name, string said, string heading)
    {
        var isPercent = heading.Contains('%') || heading.Contains("percent", StringComparison.Ordinal);
        var written = isPercent && said.Any(char.IsAsciiDigit) && !said.Contains('%') ? said + " %" : said;
        var (rest, share, remark) = ShareWords.Take(PaperText.Of(written).Trim());
        if (rest.Length > 0)
        {
            // 0.3 may be thirty percent or three tenths of one: only the supplier's heading can tell.
            throw new InputException("supplied.not-a-share", ("said", said));
        }
        return name with { Share = share, Remarks = remark is null ? name.Remarks : name.Remarks.Add(remark) };
    }

    private static List<(string[] Cells, int Line)> Rows(string file, string text)
    {
        var first = text.Split('\n', 2)[0];
        var options = new CsvReaderOptions
        {
            Separator = first.Count(c => c == ';') > first.Count(c => c == ',') ? ';' : ',',
            HasHeader = false,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Throw,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
        };
        var rows = new List<(string[], int)>();
        try
        {
            using var reader = CsvReader.Create(new StringReader(text.TrimStart('\uFEFF')), options, leaveOpen: false);
            while (reader.Read())
                rows.Add(([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.GetString(i) ?? "")], (int)reader.LineNumber));
        }
        catch (CsvFormatException e)
        {
            throw new InputException(file, (int)e.LineNumber, "supplied.table-unreadable");
        }
        return rows;
    }
}
