using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>Where books may be kept.</summary>
public sealed class BookPlaceTests
{
    [Fact]
    public void A_password_in_the_workshops_file_is_refused_with_where_to_keep_it_and_never_repeated()
    {
        using var shop = new TestShop();
        shop.Write("workshop.yaml",
            "business: Rooksedge Bodycare\nmarket: us\nrecords: \"Host=127.0.0.1;Database=books;Username=maker;Password=hunter2\"\n");
        var says = TestShop.Refusal(() => OpenBooks.Open(shop.Folder));
        Assert.Contains("workshop.yaml, line 3", says);
        Assert.Contains("PGPASSFILE", says);
        Assert.DoesNotContain("hunter2", says);
    }

    [Theory]
    [InlineData("Host=127.0.0.1;Database=b", false)]
    [InlineData("Host=localhost;Database=b", false)]
    [InlineData("Host=/var/run/postgresql;Database=b", false)]
    [InlineData("Host=::1;Database=b", false)]
    [InlineData("Host=books.example.com;Database=b", true)]
    [InlineData("Host=10.0.0.7;Database=b", true)]
    [InlineData("Host=127.0.0.1,books.example.com;Database=b", true)]
    [InlineData("Host=localhost.example.com;Database=b", true)]
    public void A_server_on_another_machine_is_told_from_one_here(string connection, bool elsewhere) =>
        Assert.Equal(elsewhere, BookPlace.OnServer(connection).IsElsewhere);

    [Fact]
    public void A_server_that_nobody_agreed_to_is_not_connected_to()
    {
        using var shop = new TestShop();
        // 192.0.2.0/24 is kept for documentation (RFC 5737): a connection would time out, and not be refused at once.
        shop.Write("workshop.yaml",
            "business: Rooksedge Bodycare\nmarket: us\nrecords: \"Host=192.0.2.7;Database=books;Username=maker\"\n");
        var says = TestShop.Refusal(() => OpenBooks.Open(shop.Folder));
        Assert.Contains("books on 192.0.2.7:5432", says);
        Assert.Contains("agree-server", says);
    }

    [Fact]
    public void A_server_elsewhere_is_connected_to_once_its_user_agreed_and_not_when_it_is_reached_another_way()
    {
        // Of two hosts the first that answers is used: the second makes it a server elsewhere, the first is the one of the tests.
        var elsewhere = TestServer.NewDatabase()
            .Replace("Host=127.0.0.1", "Host=127.0.0.1,books.example.invalid", StringComparison.Ordinal);
        using var shop = new TestShop();
        var before = Environment.GetEnvironmentVariable("XDG_CONFIG_HOME");
        Environment.SetEnvironmentVariable("XDG_CONFIG_HOME", Path.Combine(shop.Folder, "settings"));
        try
        {
            void Name(string server) => shop.Write("workshop.yaml", $"business: Rooksedge Bodycare\nmarket: us\nrecords: \"{server}\"\n");
            Name(elsewhere);
            Assert.Contains("agree-server", TestShop.Refusal(() => OpenBooks.Open(shop.Folder)));
            KnownServers.Agree(shop.Folder);
            Assert.Empty(OpenBooks.Open(shop.Folder).Read().Receipts);
            Name(elsewhere + ";SSL Mode=Disable");
            Assert.Contains("agree-server", TestShop.Refusal(() => OpenBooks.Open(shop.Folder)));
        }
        finally
        {
            Environment.SetEnvironmentVariable("XDG_CONFIG_HOME", before);
        }
    }
}
