using LabelForge.Records.Books;

[assembly: AssemblyFixture(typeof(LabelForge.Tests.Shared.TestServerEnd))]

namespace LabelForge.Tests.Shared;

/// <summary>One server for all tests of an assembly, each with a database of its own.</summary>
public static class TestServer
{
    private static readonly Lazy<PostgresServer> Shared = new(() => new PostgresServer());
    private static readonly Lazy<string> EmptyBooks = new(() =>
    {
        OpenBooks.Open(BookPlace.OnServer(Make("template0", out var name)));
        return name;
    });
    private static int _databases;

    /// <summary>A new, empty database; skips the test where no server is installed.</summary>
    public static string NewDatabase() => Make("template0", out _);

    /// <summary>A database with empty books, copied from one in which they were made; skips the
    /// test where no server is installed.</summary>
    public static string NewBooks()
    {
        SkipWithoutServer();
        return Make(EmptyBooks.Value, out _);
    }

    public static void StopAll()
    {
        if (Shared.IsValueCreated)
            Shared.Value.Dispose();
    }

    private static string Make(string template, out string name)
    {
        SkipWithoutServer();
        name = $"books{Interlocked.Increment(ref _databases)}";
        return Shared.Value.Make(name, template);
    }

    private static void SkipWithoutServer() =>
        Assert.SkipUnless(PostgresServer.IsInstalled,
            "No PostgreSQL server is on this machine (Debian: apt install postgresql; or run build/test).");
}

/// <summary>Stops the server when all tests are done.</summary>
public sealed class TestServerEnd : IDisposable
{
    public void Dispose() => TestServer.StopAll();
}
