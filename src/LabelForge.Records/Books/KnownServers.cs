namespace LabelForge.Records.Books;

/// <summary>The servers on other machines that whoever sits here has agreed to keep books on.</summary>
/// <remarks>
/// A workshop that somebody sends along may name any server; to connect is to tell it who and where one is, and to try one's
/// credentials on it. The list is the user's own, outside every workshop. How a server is reached counts too: a workshop that
/// is changed to reach it without encryption is asked about anew.
/// </remarks>
public static class KnownServers
{
    /// <summary>Agrees to a workshop's server.</summary>
    /// <returns>How messages name it.</returns>
    /// <exception cref="InputException">The workshop names none, or the list cannot be written.</exception>
    public static string Agree(string workshopFolder)
    {
        var place = BookPlace.Of(workshopFolder);
        if (place.Server is not { } server)
            throw new InputException("server.own-folder");
        if (Listed().Contains(server, StringComparer.Ordinal))
            return place.Shown;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(ListPath)!);
            File.AppendAllLines(ListPath, [server]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(ListPath, 0, "server.list-not-written", ("message", e.Message));
        }
        return place.Shown;
    }

    /// <summary>Refuses a server on another machine that nobody has agreed to.</summary>
    /// <exception cref="InputException">It is not agreed to.</exception>
    internal static void RefuseUnknown(BookPlace place)
    {
        if (place is { IsElsewhere: true, Server: { } server } && !Listed().Contains(server, StringComparer.Ordinal))
            throw new InputException("workshop.yaml", 0, "server.unknown", ("shown", place.Shown));
    }

    private static string ListPath =>
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "labelforge", "servers");

    private static string[] Listed()
    {
        try
        {
            return File.Exists(ListPath) ? File.ReadAllLines(ListPath) : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
