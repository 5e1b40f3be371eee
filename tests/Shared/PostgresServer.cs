using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace LabelForge.Tests.Shared;

/// <summary>A PostgreSQL server of Debian's package, thrown away at its end: its own data folder, loopback only, a free port.</summary>
public sealed class PostgresServer : IDisposable
{
    private readonly string _folder;
    private readonly int _port;

    /// <summary>Makes and starts one.</summary>
    /// <param name="keepsPromises">Whether what is committed is on the disk; where nothing is
    /// measured and the data are thrown away it need not be.</param>
    public PostgresServer(bool keepsPromises = false)
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
        Run([.. Nobody, Program("initdb"), "-D", $"{_folder}/data", "-U", "maker", "-A", "trust", "-E", "UTF8", "--no-locale",
            "--no-sync"]);
        Run([.. Nobody, Program("pg_ctl"), "-D", $"{_folder}/data", "-w", "-l", $"{_folder}/log", "-o",
            $"-p {_port} -h 127.0.0.1 -k {_folder} {(keepsPromises ? "" : "-F ")}-c max_connections=60", "start"]);
    }

    /// <summary>Whether the machine has one.</summary>
    public static bool IsInstalled => OperatingSystem.IsLinux() && InstalledProgram.IsProgram(Program("initdb"));

    private static string[] Nobody =>
        Environment.UserName == "root" ? ["setpriv", "--reuid=nobody", "--regid=nogroup", "--clear-groups", "env", "HOME=/tmp"] : [];

    /// <summary>Makes a database, as a copy of another.</summary>
    /// <returns>How it is connected to.</returns>
    public string Make(string name, string template = "template0")
    {
        using var connection = new NpgsqlConnection(To("postgres"));
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"CREATE DATABASE {name} TEMPLATE {template}";
        command.ExecuteNonQuery();
        return To(name);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Run([.. Nobody, Program("pg_ctl"), "-D", $"{_folder}/data", "-m", "immediate", "stop"]);
        Directory.Delete(_folder, recursive: true);
    }

    private string To(string database) => $"Host=127.0.0.1;Port={_port};Database={database};Username=maker;Pooling=false";

    // Debian keeps the server's programs apart, by version.
    private static string Program(string name) =>
        (Directory.Exists("/usr/lib/postgresql")
            ? Directory.EnumerateDirectories("/usr/lib/postgresql").OrderDescending()
            : Enumerable.Empty<string>())
            .Select(d => $"{d}/bin/{name}").FirstOrDefault(InstalledProgram.IsProgram) ?? $"/usr/local/bin/{name}";

    private static void Run(params string[] call)
    {
        using var process = Process.Start(new ProcessStartInfo(call[0], call[1..])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = "/tmp",
        })!;
        // The server that is started keeps the output open; only the call itself is waited for.
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{string.Join(' ', call)} ended with {process.ExitCode}.");
    }
}
