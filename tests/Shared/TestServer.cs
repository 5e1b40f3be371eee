using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using LabelForge.Records.Books;
using Npgsql;

[assembly: AssemblyFixture(typeof(LabelForge.Tests.Shared.TestServerEnd))]

namespace LabelForge.Tests.Shared;

/// <summary>A PostgreSQL server of Debian's package, thrown away when the tests end: its own data folder, loopback only, a free port.</summary>
public sealed class TestServer : IDisposable
{
    private static readonly Lazy<TestServer> Shared = new(() => new TestServer());
    private static readonly Lazy<string> EmptyBooks = new(() =>
    {
        OpenBooks.Open(BookPlace.OnServer(NewDatabase(out var name)));
        return name;
    });
    private static int _databases;
    private readonly string _folder;
    private readonly int _port;

    private TestServer()
    {
        _folder = Directory.CreateTempSubdirectory("labelforge-server-").FullName;
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            _port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }
        // The server refuses to run as root.
        if (Environment.UserName == "root")
            Run("chown", "nobody", _folder);
        Run([.. Nobody, Program("initdb"), "-D", $"{_folder}/data", "-U", "maker", "-A", "trust", "-E", "UTF8", "--no-locale", "--no-sync"]);
        Run([.. Nobody, Program("pg_ctl"), "-D", $"{_folder}/data", "-w", "-l", $"{_folder}/log", "-o", $"-p {_port} -h 127.0.0.1 -k {_folder} -F -c max_connections=60", "start"]);
    }

    private static string[] Nobody => Environment.UserName == "root" ? ["setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups", "env", "HOME=/tmp"] : [];

    /// <summary>A new, empty database; skips the test where no server is installed.</summary>
    public static string NewDatabase() => NewDatabase(out _);

    /// <summary>A database with empty books, copied from one in which they were made.</summary>
    public static string NewBooks()
    {
        SkipWithoutServer();
        return NewDatabase(out _, EmptyBooks.Value);
    }

    private static void SkipWithoutServer() =>
        Assert.SkipUnless(OperatingSystem.IsLinux() && InstalledProgram.IsProgram(Program("initdb")), "No PostgreSQL server is on this machine (Debian: apt install postgresql; or run build/test).");

    private static string NewDatabase(out string name, string template = "template0")
    {
        SkipWithoutServer();
        name = $"books{Interlocked.Increment(ref _databases)}";
        using var connection = new NpgsqlConnection(Shared.Value.To("postgres"));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"CREATE DATABASE {name} TEMPLATE {template}";
        command.ExecuteNonQuery();
        return Shared.Value.To(name);
    }

    public static void StopAll()
    {
        if (Shared.IsValueCreated)
            Shared.Value.Dispose();
    }

    public void Dispose()
    {
        Run([.. Nobody, Program("pg_ctl"), "-D", $"{_folder}/data", "-m", "immediate", "stop"]);
        Directory.Delete(_folder, recursive: true);
    }

    private string To(string database) => $"Host=127.0.0.1;Port={_port};Database={database};Username=maker;Pooling=false";

    // Debian keeps the server's programs apart, by version.
    private static string Program(string name) =>
        (Directory.Exists("/usr/lib/postgresql") ? Directory.EnumerateDirectories("/usr/lib/postgresql").OrderDescending() : Enumerable.Empty<string>())
            .Select(d => $"{d}/bin/{name}").FirstOrDefault(InstalledProgram.IsProgram) ?? $"/usr/local/bin/{name}";

    private static void Run(params string[] call)
    {
        using var process = Process.Start(new ProcessStartInfo(call[0], call[1..]) { RedirectStandardOutput = true, WorkingDirectory = "/tmp" })!;
        // The server that is started keeps the output open; only the call itself is waited for.
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{string.Join(' ', call)} ended with {process.ExitCode}.");
    }
}

/// <summary>Stops the server when all tests are done.</summary>
public sealed class TestServerEnd : IDisposable
{
    public void Dispose() => TestServer.StopAll();
}
