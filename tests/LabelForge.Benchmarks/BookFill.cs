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
        OpenBooks.Open(folder);
        var workshop = Workshop.Open(folder);
        var frozen = FrozenRecipe.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe(BenchWorkshop.Recipe)), "us", null).ToJson();
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, OpenBooks.FileName)};Pooling=False");
        connection.Open();
        using var moment = connection.BeginTransaction();
        var digest = FrozenText.DigestOf(frozen);
        Insert(connection, "FrozenRecipes", "Digest", "Json")(digest, frozen);
        var receipt = Insert(connection, "Receipts", "Id", "On", "By", "Material", "Supplier", "SupplierLot", "AmountMillionths", "PriceCents");
        var batch = Insert(connection, "Batches", "Id", "On", "By", "Lot", "Recipe", "Product", "FrozenDigest", "PiecesPlanned");
        var weighing = Insert(connection, "Weighings", "Id", "On", "By", "BatchId", "Material", "ReceiptId", "Micrograms");
        var closing = Insert(connection, "Closings", "Id", "On", "By", "BatchId", "Made", "Rejected");
        var sale = Insert(connection, "Sales", "Id", "On", "By", "BatchId", "Pieces", "To", "PaidCents");
        var bottleLeft = Insert(connection, "ReceiptStock", "Bottle", "ReceiptId", "Material", "LeftMillionths");
        var batchLeft = Insert(connection, "BatchStock", "Number", "BatchId", "Lot", "Closings", "Made", "Rejected", "Sold", "Returned", "BackOnShelf", "Disposed", "Counted", "Left");
        for (var i = 1; i <= batches; i++)
        {
            var on = BenchWorkshop.Day.AddDays(-3650 + i * 3650 / batches).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            var bottle = (i - 1) / BatchesToAReceipt * 2 + 1;
            if ((i - 1) % BatchesToAReceipt == 0)
            {
                var uses = Math.Min(BatchesToAReceipt, batches - i + 1);
                receipt(bottle, on, "A", "white-base", "Heron", $"H{bottle}", 15_000_000_000L, 18_000);
                receipt(bottle + 1, on, "A", "castor-oil", "Heron", $"H{bottle + 1}", 300_000_000L, 900);
                bottleLeft(bottle, bottle, "white-base", 15_000_000_000L - uses * 725_000_000L);
                bottleLeft(bottle + 1, bottle + 1, "castor-oil", 300_000_000L - uses * 14_000_000L);
            }
            batch(i, on, "A", Lot(i), BenchWorkshop.Recipe, "Guest bar", digest, 24);
            weighing(2 * i - 1, on, "A", i, "white-base", bottle, 725_000_000L);
            weighing(2 * i, on, "A", i, "castor-oil", bottle + 1, 14_000_000L);
            closing(i, on, "A", i, 24, 1);
            sale(i, on, "A", i, 12, $"Buyer {i % Buyers}", 6_000);
            batchLeft(i, i, Lot(i), 1, 24, 1, 12, 0, 0, 0, 0, 11);
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
