using System.Diagnostics;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Tests.Books;

public class SafetyTests
{
    [Fact]
    public void In_a_file_the_log_is_write_ahead_and_every_commit_is_synchronised()
    {
        using var shop = new TestShop();
        shop.Book.Write((_, context) =>
        {
            Assert.Equal("wal", Ask(context, "PRAGMA journal_mode"));
            Assert.Equal(2L, Ask(context, "PRAGMA synchronous"));
            Assert.Equal(1L, Ask(context, "PRAGMA foreign_keys"));
            return 0;
        });
    }

    // Two real commands on one workshop, each with its own thirty receipts.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Two_commands_at_once_both_write_all_of_theirs(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Write("in.csv", "material,amount,price\n" + string.Concat(Enumerable.Repeat("base,1 kg,9.50\n", 30)));
        Process[] both = [Command(shop, "receive-list", $"{shop.Folder}/in.csv", "--sure"),
            Command(shop, "receive-list", $"{shop.Folder}/in.csv", "--sure")];
        var told = both.SelectMany(p => p.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)).ToArray();
        foreach (var process in both)
            process.WaitForExit();
        Assert.Equal(60, told.Distinct().Count());
        Assert.Equal(60, shop.Book.Read().Receipts.Count);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_writer_that_does_not_finish_is_waited_for_and_then_named(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        var impatient = OpenBooks.Open(shop.Book.Place, patience: 1);
        var says = shop.Book
            .Write((_,
                _) => TestShop.Refusal(() => StockMovements.Complain(impatient, Shipped.Markets, null, "a buyer", "itch", false, false,
                TestShop.Day,
                    "A")));
        Assert.Contains("Another program is writing", says);
        Assert.Empty(shop.Book.Read().Complaints);
    }

    [Fact]
    public void A_disk_that_fills_up_is_told_a_list_is_written_whole_or_not_and_what_was_acknowledged_is_there_afterwards()
    {
        InstalledProgram.OrSkip("unshare");
        Assert.SkipUnless(Ends("unshare", "-rm", "true"), "This machine lets nobody but root make a name space of mounts.");
        using var shop = new TestShop();
        string List(int rows) =>
        "material,amount,price,note\n"
            + string.Concat(Enumerable.Range(0, rows).Select(i => $"base,{i + 1} kg,9.50,{new string('x', 20_000)}\n"));
        shop.Write("few.csv", List(4));
        shop.Write("many.csv", List(200));
        // A disk of a megabyte where the machine lets us make one; else files that may not grow past a megabyte.
        var cli = $"dotnet {AppContext.BaseDirectory}LabelForge.Cli.dll";
        var script = $"""
            cd {shop.Folder} && mkdir disk
            if mount -t tmpfs -o size=1m tmpfs disk 2>/dev/null; then :; else trap '' XFSZ; ulimit -f 1000; fi
            cp -r workshop.yaml materials disk/
            export DOTNET_EnableWriteXorExecute=0
            {cli} receive-list few.csv --workshop disk | wc -l
            {cli} receive-list many.csv --sure --workshop disk 2>says | wc -l
            ulimit -f unlimited 2>/dev/null
            {cli} books receipt --workshop disk | grep -c xxxxx
            cat says
            """;
        using var process = Process.Start(new ProcessStartInfo("unshare", ["-rm", "bash", "-c", script])
        {
            RedirectStandardOutput = true,
        })!;
        var lines = process.StandardOutput.ReadToEnd().Split('\n');
        process.WaitForExit();
        Assert.Equal(["4", "0", "4"], lines[..3]);
        Assert.Matches("disk (is full|did not take)", lines[3]);
    }

    [Fact]
    public void Books_that_may_only_be_read_are_read_log_and_all_and_not_written_to()
    {
        if (Environment.UserName == "root")
            InstalledProgram.OrSkip("setpriv");
        using var shop = new TestShop();
        shop.Receive("base", 1000, 9);
        Process.Start("chmod", ["-R", "a-w", shop.Folder]).WaitForExit();
        try
        {
            var (listed, rows) = AsReader(shop, "books", "receipt");
            Assert.Equal(0, listed);
            Assert.Contains("base", rows);
            Assert.Equal(0, AsReader(shop, "stock-in-hand").Code);
            var (written, says) = AsReader(shop, "receive", "base", "1 kg", "--price", "1");
            Assert.Equal(2, written);
            Assert.Contains("read-only", says);
        }
        finally
        {
            Process.Start("chmod", ["-R", "u+w", shop.Folder]).WaitForExit();
        }
        Assert.Single(shop.Book.Read().Receipts);
    }

    // Root may write anywhere, unless it lays its rights down.
    private static (int Code, string Says) AsReader(TestShop shop, params string[] words)
    {
        string[] call = [.. Environment.UserName == "root"
            ? ["setpriv", "--bounding-set", "-all", "--inh-caps", "-all"]
            : Array.Empty<string>(), "dotnet", $"{AppContext.BaseDirectory}LabelForge.Cli.dll", .. words, "--workshop", shop.Folder];
        using var process = Process.Start(new ProcessStartInfo(call[0], call[1..])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var says = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, says + errors.GetAwaiter().GetResult());
    }

    [Fact]
    public void A_folder_that_may_only_be_read_is_told()
    {
        if (Environment.UserName == "root")
            InstalledProgram.OrSkip("setpriv");
        using var shop = new TestShop();
        File.Delete(shop.Book.Path);
        Process.Start("chmod", ["-R", "a-w", shop.Folder]).WaitForExit();
        // Root may write anywhere, unless it lays its rights down.
        string[] call = [.. Environment.UserName == "root"
            ? ["setpriv", "--bounding-set", "-all", "--inh-caps", "-all"]
            : Array.Empty<string>(), "dotnet", $"{AppContext.BaseDirectory}LabelForge.Cli.dll", "receive", "base", "1 kg", "--price", "1",
            "--workshop", shop.Folder];
        using var process = Process.Start(new ProcessStartInfo(call[0], call[1..]) { RedirectStandardError = true })!;
        var says = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Process.Start("chmod", ["-R", "u+w", shop.Folder]).WaitForExit();
        Assert.Contains("read-only", says);
        Assert.Equal(2, process.ExitCode);
    }

    [Fact]
    public void A_page_spoilt_in_the_middle_of_the_file_is_noticed()
    {
        using var shop = new TestShop();
        for (var i = 0; i < 40; i++)
            shop.Receive("base", 100, 1);
        BookCopy.Backup(shop.Folder, Path.Combine(shop.Folder, "copy.db"));
        File.Delete(shop.Book.Path + "-wal");
        var bytes = File.ReadAllBytes(Path.Combine(shop.Folder, "copy.db"));
        for (var page = 1; page < bytes.Length / 4096; page++)
            Array.Fill(bytes, (byte)0x5A, page * 4096, 64);
        File.WriteAllBytes(shop.Book.Path, bytes);
        Assert.Contains("labelforge restore", TestShop.Refusal(() => OpenBooks.Open(shop.Folder).Read()));
    }

    // The way from one bench to several, and back.
    [Fact]
    public void Books_go_from_a_file_to_a_server_and_back()
    {
        using var file = new TestShop();
        using var server = TestShop.OnServer();
        file.Stock();
        file.Finish("26R02-01X");
        var copy = Path.Combine(file.Folder, "copy.db");
        var entries = BookCopy.Backup(file.Folder, copy);
        Assert.Equal(entries, BookCopy.Restore(server.Folder, copy).Entries);
        Assert.Contains("hold entries already", TestShop.Refusal(() => BookCopy.Restore(server.Folder, copy)));
        Assert.Equal(4, server.Receive("base", 1, 1).Id);
        Assert.Equal(entries + 1, BookCopy.Backup(server.Folder, copy));
        Assert.Equal(entries + 1, BookCopy.Restore(file.Folder, copy).Entries);
        Assert.Equal(4, OpenBooks.Open(file.Folder).Read().Receipts.Count);
    }

    [Theory]
    [InlineData("Host=127.0.0.1;Port=1;Database=books;Username=maker;Timeout=2", "does not answer")]
    [InlineData("Host=127.0.0.1", "which server and database")]
    [InlineData("books", "cannot be read")]
    public void A_server_that_cannot_be_reached_is_told(string records, string says)
    {
        using var shop = new TestShop();
        File.AppendAllText(Path.Combine(shop.Folder, "workshop.yaml"), $"records: \"{records}\"\n");
        Assert.Contains(says, TestShop.Refusal(() => OpenBooks.Open(shop.Folder)));
    }

    [Fact]
    public void A_server_without_the_database_says_how_to_make_it()
    {
        var place = BookPlace.OnServer(TestServer.NewDatabase().Replace("Database=books", "Database=nosuchbooks"));
        Assert.Contains("createdb", TestShop.Refusal(() => OpenBooks.Open(place)));
    }

    private static Process Command(TestShop shop, params string[] words) =>
        Process.Start(new ProcessStartInfo("dotnet",
            [$"{AppContext.BaseDirectory}LabelForge.Cli.dll", .. words, "--workshop", shop.Folder])
        { RedirectStandardOutput = true })!;

    private static object? Ask(RecordsContext context, string sql)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = Microsoft.EntityFrameworkCore.Storage.DbContextTransactionExtensions
            .GetDbTransaction(context.Database.CurrentTransaction!);
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    [Fact]
    public void A_copy_made_in_use_is_put_back_whole()
    {
        using var shop = new TestShop();
        shop.Stock();
        shop.Finish("26R02-01X");
        var copy = Path.Combine(shop.Folder, "copy.db");
        var entries = BookCopy.Backup(shop.Folder, copy);
        Assert.Equal(3 + 1 + 3 + 1, entries);
        StockMovements.Sell(shop.Book, "26R02-01X", 1, "Ann", 7, TestShop.Day, "A");
        var (restored, kept) = BookCopy.Restore(shop.Folder, copy);
        Assert.Equal(entries, restored);
        Assert.True(File.Exists(kept));
        Assert.Empty(OpenBooks.Open(shop.Folder).Read().Sales);
    }

    [Fact]
    public void Damaged_books_say_what_to_do_and_a_damaged_copy_is_not_put_in_place()
    {
        using var shop = new TestShop();
        shop.Stock();
        var copy = Path.Combine(shop.Folder, "copy.db");
        BookCopy.Backup(shop.Folder, copy);
        File.WriteAllBytes(shop.Book.Path, [.. Enumerable.Range(0, 9000).Select(i => (byte)(i * 7))]);
        File.Delete(shop.Book.Path + "-wal");
        Assert.Contains("labelforge restore", TestShop.Refusal(() => OpenBooks.Open(shop.Folder).Read()));
        var torn = Path.Combine(shop.Folder, "torn.db");
        File.WriteAllBytes(torn, File.ReadAllBytes(copy)[..5000]);
        Assert.Contains("not a sound copy", TestShop.Refusal(() => BookCopy.Restore(shop.Folder, torn)));
        BookCopy.Restore(shop.Folder, copy);
        Assert.Equal(3, OpenBooks.Open(shop.Folder).Read().Receipts.Count);
    }

    [Fact]
    public void Where_no_file_can_be_made_the_message_says_so() =>
        Assert.Contains("read-only, or not there", TestShop.Refusal(() => OpenBooks.Open("/proc/nowhere")));

    [Fact]
    public void A_full_disk_loses_nothing_that_was_acknowledged()
    {
        using var shop = new TestShop();
        shop.Stock();
        // SQLite's own limit of pages stands in for the end of the disk.
        var says = TestShop.Refusal(() => shop.Book.Write((_, context) =>
        {
            context.Database.ExecuteSqlRaw("PRAGMA max_page_count=1");
            return context.Receipts
                .Add(new Receipt
                {
                    On = TestShop.Day,
                    By = "A",
                    Material = "base",
                    Amount = 1,
                    Price = 1,
                    Note = new string('x', 90_000),
                });
        }));
        Assert.Contains("disk is full", says);
        Assert.Equal(3, shop.Book.Read().Receipts.Count);
        shop.Receive("base", 5, 1);
        Assert.Equal(4, shop.Book.Read().Receipts.Count);
    }

    [Fact]
    public void The_tables_are_those_that_the_program_knows()
    {
        using var shop = new TestShop();
        using var context = new RecordsContext(new DbContextOptionsBuilder<RecordsContext>()
            .UseSqlite(new SqliteConnectionStringBuilder { DataSource = shop.Book.Path, Pooling = false }.ToString()).Options);
        Assert.False(context.Database.HasPendingModelChanges());
        Assert.Empty(context.Database.GetPendingMigrations());
    }

    private static bool Ends(string program, params string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    }
}
