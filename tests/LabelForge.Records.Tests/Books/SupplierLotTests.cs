using CsCheck;
using LabelForge.Checks.Reading;
using LabelForge.Lookup;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Tests.Tracing;
using Microsoft.Data.Sqlite;
using Npgsql;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Books;

/// <summary>A supplier's lot is found however its capitals and accents are typed, on either store.</summary>
public sealed class SupplierLotTests
{
    private const string Letters = "AbÄäÉéÈÑñÖöŁłŠšČçÇÅåØøŻżÎîŐőÜü";

    private static readonly Gen<string> Lot =
        Gen.Select(Gen.Char[Letters].Array[1, 5], Gen.Int[1, 99], (letters, number) => $"{new string(letters)}-{number}");

    private static TestShop Shop(bool server) => server ? TestShop.OnServer() : new TestShop();

    private static int Receive(TestShop shop, string lot) => StockMovements.Receive(shop.Book,
        new Receipt { On = TestShop.Day, By = "A", Material = "base", Amount = 100, Price = 1, Supplier = "Heron", SupplierLot = lot }).Id;

    private static IEnumerable<int> Followed(TestShop shop, string typed) => Trace.Of(shop.Book, typed).Bottles.Select(b => b.MaterialLot);

    [Theory]
    [InlineData(false, 40)]
    [InlineData(true, 5)]
    public void A_bottle_is_found_by_its_suppliers_lot_in_capitals_in_small_letters_and_without_accents(bool server, int times)
    {
        using var shop = Shop(server);
        Lot.Sample(lot =>
        {
            var number = Receive(shop, $" {lot} ");
            foreach (var typed in new[] { lot, lot.ToUpperInvariant(), lot.ToLowerInvariant(), FoldedText.Of(lot) })
            {
                Assert.Contains(number, Followed(shop, typed));
                Assert.Equal(LedgerTrace.Of(shop.Book.Read(), typed).Bottles.Select(b => b.MaterialLot).Order(),
                    Followed(shop, typed).Order());
                Assert.Contains(shop.Book.Ask(b => new FindAnything(shop.Workshop, b).In(b, typed)),
                    f => f.Kind == FoundKind.Bottle && f.Key == $"M{number}");
            }
        }, iter: times, threads: 1);
        Assert.Empty(shop.Book.Check().Differences);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Of_two_lots_that_differ_in_an_accent_alone_the_one_that_was_typed_is_followed(bool server)
    {
        using var shop = Shop(server);
        var (plain, marked) = (Receive(shop, "A-12"), Receive(shop, "Ä-12"));
        Assert.Equal([marked], Followed(shop, "ä-12"));
        Assert.Equal([plain], Followed(shop, "a-12"));
        Correcting.Of(shop.Book, Shipped.Markets, "receipt", plain, new Dictionary<string, string> { ["supplier lot"] = "Ö-7" }, "misread", TestShop.Day,
            "A");
        Assert.Equal([plain], Followed(shop, "o-7"));
        Assert.Equal([marked], Followed(shop, "a-12"));
        Assert.Empty(shop.Book.Check().Differences);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Books_from_before_lots_were_folded_are_found_in_as_well_once_they_are_opened(bool server)
    {
        using var shop = Shop(server);
        var number = Receive(shop, "ÉTÉ-3");
        AsBefore(shop, server);
        var book = OpenBooks.Open(shop.Folder);
        Assert.Equal([number], Trace.Of(book, "été-3").Bottles.Select(b => b.MaterialLot));
        Assert.Empty(book.Check().Differences);
    }

    // The books as the last version but one left them.
    private static void AsBefore(TestShop shop, bool server)
    {
        using System.Data.Common.DbConnection connection = server
            ? new NpgsqlConnection(BookPlace.Of(shop.Folder).Server)
            : new SqliteConnection($"Data Source={shop.Folder}/records.db;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = """
            DROP INDEX "IX_ReceiptStock_SupplierLot";
            ALTER TABLE "ReceiptStock" DROP COLUMN "SupplierLot";
            DELETE FROM "__EFMigrationsHistory" WHERE "MigrationId" LIKE '%SupplierLots';
            """;
        command.ExecuteNonQuery();
    }
}
