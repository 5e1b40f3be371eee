using LabelForge.Recipes.Files;
using Npgsql;

namespace LabelForge.Records.Books;

/// <summary>Where a workshop keeps its books: a file in its folder, or a PostgreSQL server that several benches share.</summary>
/// <param name="Shown">How messages name the place; never a password.</param>
/// <param name="File">The file; null for a server.</param>
/// <param name="Server">How to reach the server; null for a file.</param>
public sealed record BookPlace(string Shown, string? File, string? Server)
{
    /// <summary>The place that a workshop's file names with <c>records</c>; the folder where it names none.</summary>
    /// <exception cref="InputException">workshop.yaml cannot be read, or what it says is no way to a server.</exception>
    public static BookPlace Of(string workshopFolder)
    {
        var yaml = Path.Combine(workshopFolder, "workshop.yaml");
        var server = System.IO.File.Exists(yaml) ? YamlFile.Read(yaml, "workshop.yaml").OptionalText("records") : null;
        return server is null ? InFile(Path.Combine(workshopFolder, OpenBooks.FileName)) : OnServer(server.Text, server.Line);
    }

    /// <summary>A file.</summary>
    public static BookPlace InFile(string path) => new(path, path, null);

    /// <summary>Whether it is a server on another machine: everything that is written and the maker's credentials go there.</summary>
    public bool IsElsewhere => Server is not null && new NpgsqlConnectionStringBuilder(Server).Host!.Split(',').Any(h => !IsHere(h));

    private static bool IsHere(string host) =>
        host.StartsWith('/')
        || host.Split(':')[0] is "localhost"
        || (System.Net.IPAddress.TryParse(host, out var address) && System.Net.IPAddress.IsLoopback(address))
        || (System.Net.IPAddress.TryParse(host.Split(':')[0], out var first) && System.Net.IPAddress.IsLoopback(first));

    /// <summary>A server, by its connection string.</summary>
    /// <exception cref="InputException">It is none.</exception>
    public static BookPlace OnServer(string connection, int line = 0)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        try
        {
            var read = new NpgsqlConnectionStringBuilder(connection);
            if (string.IsNullOrWhiteSpace(read.Host) || string.IsNullOrWhiteSpace(read.Database))
                throw new InputException("workshop.yaml", line, "server.records-incomplete");
            if (!string.IsNullOrEmpty(read.Password))
                throw new InputException("workshop.yaml", line, "server.records-password");
            read.ApplicationName = "labelforge";
            // Errors may name the values that they are about only here, where the books belong to the one who reads them.
            read.IncludeErrorDetail = false;
            return new BookPlace(Invariant($"{read.Database} on {read.Host}:{read.Port}"), null, read.ToString());
        }
        catch (ArgumentException e)
        {
            throw new InputException("workshop.yaml", line, "server.records-unreadable", ("message", e.Message.TrimEnd('.')));
        }
    }
}
