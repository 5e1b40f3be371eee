using System.Globalization;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;

namespace LabelForge.Benchmarks;

/// <summary>Books of a shop that has made so many batches: written straight into the tables, in one transaction, since only their reading is measured.</summary>
internal static class BookFill
{
    private const int BatchesToAReceipt = 20;
    private const int Buyers = 5000;

    /// <summary>A lot's code in these books.</summary>
    public static string Lot(int batch) => string.Create(CultureInfo.InvariantCulture, $"B{batch:D6}");

    /// <summary>A workshop with such books; each batch has two weighings, a closing and a sale, and twenty share a bottle of each material.</summary>
    public static string Make(int batches)
    {
        var folder = Scratch.Path($"books-{batches}");
        Copy(BenchWorkshop.Folder, folder);
        RecordBook.Open(folder);
        var workshop = Workshop.Open(folder);
        var frozen = FrozenRecipe.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe(BenchWorkshop.Recipe)), "us", null).ToJson();
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, RecordBook.FileName)};Pooling=False");
        connection.Open();
        using var moment = connection.BeginTransaction();
        var receipt = Insert(connection, "Receipts", "Id", "On", "By", "Material", "Supplier", "SupplierLot", "Amount", "Price");
        var batch = Insert(connection, "Batches", "Id", "On", "By", "Lot", "Recipe", "Product", "Frozen", "PiecesPlanned");
        var weighing = Insert(connection, "Weighings", "Id", "On", "By", "BatchId", "Material", "ReceiptId", "Grams");
        var closing = Insert(connection, "Closings", "Id", "On", "By", "BatchId", "Made", "Rejected");
        var sale = Insert(connection, "Sales", "Id", "On", "By", "BatchId", "Pieces", "To", "Paid");
        for (var i = 1; i <= batches; i++)
        {
            var on = BenchWorkshop.Day.AddDays(-3650 + i * 3650 / batches).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            var bottle = (i - 1) / BatchesToAReceipt * 2 + 1;
            if ((i - 1) % BatchesToAReceipt == 0)
            {
                receipt(bottle, on, "A", "white-base", "Heron", $"H{bottle}", "15000.0", "180.0");
                receipt(bottle + 1, on, "A", "castor-oil", "Heron", $"H{bottle + 1}", "300.0", "9.0");
            }
            batch(i, on, "A", Lot(i), BenchWorkshop.Recipe, "Guest bar", frozen, 24);
            weighing(2 * i - 1, on, "A", i, "white-base", bottle, "725.0");
            weighing(2 * i, on, "A", i, "castor-oil", bottle + 1, "14.0");
            closing(i, on, "A", i, 24, 1);
            sale(i, on, "A", i, 12, $"Buyer {i % Buyers}", "60.0");
        }
        moment.Commit();
        return folder;
    }

    private static Action<object?[]> InsertAll(SqliteConnection connection, string table, string[] columns)
    {
        var command = connection.CreateCommand();
        command.CommandText = $"INSERT INTO \"{table}\" ({string.Join(", ", columns.Select(c => $"\"{c}\""))}) VALUES ({string.Join(", ", columns.Select((_, i) => $"$p{i}"))})";
        var parameters = columns.Select((_, i) => command.Parameters.AddWithValue($"$p{i}", DBNull.Value)).ToArray();
        return values =>
        {
            for (var i = 0; i < parameters.Length; i++)
                parameters[i].Value = values[i] ?? DBNull.Value;
            command.ExecuteNonQuery();
        };
    }

    private delegate void Row(params object?[] values);

    private static Row Insert(SqliteConnection connection, string table, params string[] columns) => new(InsertAll(connection, table, columns));

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
