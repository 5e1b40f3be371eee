namespace LabelForge.Web.Editing;

/// <summary>A file that was taken out of the workshop and can be put back.</summary>
/// <param name="Name">Its name under <c>.drafts/removed</c>.</param>
/// <param name="Room">The room that it was in.</param>
/// <param name="Id">Its id there.</param>
/// <param name="At">When it was taken out, in universal time.</param>
/// <param name="Folder">The folder that it lies in.</param>
public sealed partial record RemovedFile(string Name, string Room, string Id, DateTime At, string Folder)
{
    private const string Time = "yyyyMMddHHmmss";

    /// <summary>The text of it, or what was typed last where that could not be used yet; empty where it cannot be read.</summary>
    public string Text
    {
        get
        {
            try
            {
                return File.Exists(DraftPath) ? File.ReadAllText(DraftPath) : File.ReadAllText(FilePath);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return "";
            }
        }
    }

    private string FilePath => Path.Combine(Folder, Name + ".yaml");

    // What was typed and could not be used yet lies beside it, so that nothing typed is lost by it.
    private string DraftPath => Path.Combine(Folder, Name + ".draft");

    internal static RemovedFile New(string workshop, string room, string id, DateTime at)
    {
        var folder = FolderOf(workshop);
        // To the second, as its name is read back.
        at = new DateTime(at.Year, at.Month, at.Day, at.Hour, at.Minute, at.Second, DateTimeKind.Utc);
        // Two of one name in one second: the second one is dated a second later.
        while (true)
        {
            var fresh = new RemovedFile($"{room}-{id}-{at.ToString(Time, CultureInfo.InvariantCulture)}", room, id, at, folder);
            if (!File.Exists(fresh.FilePath) && !File.Exists(fresh.DraftPath))
                return fresh;
            at = at.AddSeconds(1);
        }
    }

    internal static IReadOnlyList<RemovedFile> In(string workshop)
    {
        var folder = FolderOf(workshop);
        return !Directory.Exists(folder) ? [] :
        [
            .. Directory.EnumerateFiles(folder).Where(f => Path.GetExtension(f) is ".yaml" or ".draft")
                .Select(f => Path.GetFileNameWithoutExtension(f)).Distinct()
                .Select(name => Of(name, folder)).OfType<RemovedFile>().OrderByDescending(f => f.At)
                .ThenBy(f => f.Name, StringComparer.Ordinal),
        ];
    }

    internal void Take(string file, string draft)
    {
        Directory.CreateDirectory(Folder);
        if (File.Exists(draft))
            File.Move(draft, DraftPath);
        if (File.Exists(file))
            File.Move(file, FilePath);
    }

    internal void PutBack(string file, string draft)
    {
        Move(FilePath, file);
        Move(DraftPath, draft);
    }

    private static void Move(string from, string to)
    {
        if (!File.Exists(from))
            return;
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Move(from, to);
    }

    private static RemovedFile? Of(string name, string folder) =>
        Shape().Match(name) is { Success: true } read
        && DateTime.TryParseExact(read.Groups["at"].Value, Time, CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)
            ? new RemovedFile(name, read.Groups["room"].Value, read.Groups["id"].Value, at, folder)
            : null;

    private static string FolderOf(string workshop) => Path.Combine(workshop, ".drafts", "removed");

    [GeneratedRegex(@"^(?<room>materials|recipes)-(?<id>[A-Za-z0-9][A-Za-z0-9_-]{0,79})-(?<at>[0-9]{14})\z")]
    private static partial Regex Shape();
}
