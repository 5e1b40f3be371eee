using System.Data.Common;
using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Tests.Shared;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LabelForge.Benchmarks;

/// <summary>Books of a shop that has made so many batches: written straight into the tables, in
/// one transaction, since only their reading is measured.</summary>
/// <remarks>What lies in the house is that of a shop at work, however long it has been: the last
/// lots and bottles. The others are sold out and empty.</remarks>
internal static class BookFill
{
    private const int BatchesToAReceipt = 20;
    private const int BatchesADay = 10;
    private const int Buyers = 5000;

    private static int _made;

    /// <summary>The lots that have pieces in the house, at most.</summary>
    public const int LotsInTheHouse = 100;

    /// <summary>A lot's code in these books, ten a day; never the first of a day, which uses give out themselves.</summary>
    public static string Lot(int batch) =>
        new LotCode(BenchWorkshop.Day.AddDays(batch / BatchesADay - 9_000), 2 + batch % BatchesADay).ToString();

    /// <summary>A workshop with such books; each batch has two weighings, a closing and a sale,
    /// and twenty share a bottle of each material.</summary>
    /// <param name="batches">How many batches.</param>
    /// <param name="server">Where the books are kept; null for a file in the workshop's folder.</param>
    public static string Make(int batches, PostgresServer? server = null)
    {
        // Parts of one run fill books of one size each for itself.
        var folder = Scratch.Path($"books-{++_made}");
        Copy(BenchWorkshop.Folder, folder);
        if (server is not null)
            File.AppendAllText(Path.Combine(folder, "workshop.yaml"), $"records: \"{server.Make($"shop{batches}")}\"\n");
        var place = OpenBooks.Open(folder).Place;
        var workshop = Workshop.Open(folder);
        var frozen = FrozenRecipe.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe(BenchWorkshop.Recipe)), "us", null).ToJson();
        using DbConnection connection = place.Server is { } at
            ? new NpgsqlConnection(at)
            : new SqliteConnection($"Data Source={place.File};Pooling=False");
        connection.Open();
        using (var transaction = connection.BeginTransaction())
        {
            Fill(connection, transaction, batches, frozen);
            transaction.Commit();
        }
        if (server is not null)
        {
            // Numbers were given; and the server learns of its tables what it would have learned meanwhile.
            foreach (var table in RecordsContext.Tables)
                Run(connection,
                    $"SELECT setval(pg_get_serial_sequence('\"{table}\"', 'Id'), (SELECT COALESCE(MAX(\"Id\"), "
                        + $"0) + 1 FROM \"{table}\"), false)");
            Run(connection, "VACUUM ANALYZE");
        }
        return folder;
    }

    private static void Fill(DbConnection connection, DbTransaction transaction, int batches, string frozen)
    {
        Row Into(string table, params string[] columns) => Insert(connection, transaction, table, columns);
        var digest = FrozenText.DigestOf(frozen);
        Into("FrozenRecipes", "Digest", "Json")(digest, frozen);
        var receipt = Into("Receipts", "Id", "On", "By", "Material", "Supplier", "SupplierLot", "AmountMillionths", "PriceCents");
        var batch = Into("Batches", "Id", "On", "By", "Lot", "Recipe", "Product", "FrozenDigest", "PiecesPlanned");
        var weighing = Into("Weighings", "Id", "On", "By", "BatchId", "Material", "ReceiptId", "Micrograms");
        var closing = Into("Closings", "Id", "On", "By", "BatchId", "Made", "Rejected");
        var sale = Into("Sales", "Id", "On", "By", "BatchId", "Pieces", "To", "PaidCents");
        var bottleLeft = Into("ReceiptStock", "Bottle", "ReceiptId", "Material", "SupplierLot", "LeftMillionths");
        var batchLeft = Into("BatchStock", "Number", "BatchId", "Lot", "Closings", "Made", "Rejected", "Sold",
            "Returned", "BackOnShelf", "Disposed", "Counted", "Left");
        for (var i = 1; i <= batches; i++)
        {
            var on = BenchWorkshop.Day.AddDays(-(batches - i) / BatchesADay);
            var bottle = (i - 1) / BatchesToAReceipt * 2 + 1;
            var isThere = i > batches - LotsInTheHouse;
            if ((i - 1) % BatchesToAReceipt == 0)
            {
                var uses = Math.Min(BatchesToAReceipt, batches - i + 1);
                var more = i > batches - 2 * LotsInTheHouse ? 1_000_000_000L : 0;
                receipt(bottle, on, "A", "white-base", "Heron", $"H{bottle}", uses * 725_000_000L + more, 18_000);
                receipt(bottle + 1, on, "A", "castor-oil", "Heron", $"H{bottle + 1}", uses * 14_000_000L + more, 900);
                bottleLeft(bottle, bottle, "white-base", $"h{bottle}", more);
                bottleLeft(bottle + 1, bottle + 1, "castor-oil", $"h{bottle + 1}", more);
            }
            var (made, sold) = isThere ? (1000, 3) : (24, 23);
            batch(i, on, "A", Lot(i), BenchWorkshop.Recipe, "Guest bar", digest, 24);
            weighing(2 * i - 1, on, "A", i, "white-base", bottle, 725_000_000L);
            weighing(2 * i, on, "A", i, "castor-oil", bottle + 1, 14_000_000L);
            closing(i, on, "A", i, made, 1);
            sale(i, on, "A", i, sold, $"Buyer {i % Buyers}", 500 * sold);
            batchLeft(i, i, Lot(i), 1, made, 1, sold, 0, 0, 0, 0, made - 1 - sold);
        }
    }

    private delegate void Row(params object[] values);

    private static Row Insert(DbConnection connection, DbTransaction transaction, string table, params string[] columns)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText =
            $"INSERT INTO \"{table}\" ({string.Join(", ", columns.Select(c => $"\"{c}\""))}) VALUES ({string.Join(", ", columns.Select((_, i) => $"@p{i}"))})";
        return values =>
        {
            command.Parameters.Clear();
            for (var i = 0; i < values.Length; i++)
            {
                var parameter = command.CreateParameter();
                (parameter.ParameterName, parameter.Value) = ($"p{i}", values[i]);
                command.Parameters.Add(parameter);
            }
            command.ExecuteNonQuery();
        };
    }

    private static void Run(DbConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

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
