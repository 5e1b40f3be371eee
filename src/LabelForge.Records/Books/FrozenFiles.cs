namespace LabelForge.Records.Books;

/// <summary>What batches froze, beside lists: a list names it by its digest, and it lies in the
/// folder <c>frozen</c> next to the list.</summary>
internal sealed class FrozenFiles
{
    /// <summary>The folder's name.</summary>
    public const string Folder = "frozen";

    private readonly Dictionary<string, string> _texts;

    /// <summary>Those beside lists that are read, and those that the books have already.</summary>
    public FrozenFiles(IEnumerable<string> lists, BooksSnapshot snapshot)
    {
        _texts = snapshot.AllBatches.Select(b => b.Frozen).Distinct().ToDictionary(FrozenText.DigestOf);
        foreach (var file in lists.Select(l => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(l))!, Folder)).Distinct()
            .Where(Directory.Exists).SelectMany(f => Directory.EnumerateFiles(f, "*.json")))
        {
            var text = File.ReadAllText(file);
            _texts[FrozenText.DigestOf(text)] = text;
        }
    }

    /// <summary>What a row's batch froze: named by its digest, or, as older versions wrote it, the whole of it in the cell.</summary>
    /// <exception cref="InputException">It is not there, or cannot be read.</exception>
    public string Of(ListRow row)
    {
        var cell = row.Needed("frozen");
        var text = cell.StartsWith('{') ? cell : _texts.GetValueOrDefault(cell)
            ?? throw row.Refuse("import.frozen-missing", ("cell", cell));
        _ = FrozenRecipe.FromJson(text);
        return text;
    }
}
