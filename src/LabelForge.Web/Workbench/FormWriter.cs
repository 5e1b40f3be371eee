using LabelForge.Records.Books;

namespace LabelForge.Web.Workbench;

/// <summary>Writes one form into the books, once for its key, and remembers what was written so that it can be undone.</summary>
public sealed class FormWriter(BooksCache books, string key, bool isSure = false)
{
    /// <summary>Asks before it writes, unless it was answered already.</summary>
    /// <param name="questions">What looks like a slip.</param>
    public void Ask(ImmutableArray<Problem> questions)
    {
        if (!isSure && !questions.IsEmpty)
            throw new SlipAskedException(questions);
    }

    /// <summary>What was written; null where nothing can be undone.</summary>
    public (string List, IReadOnlyList<int> Entries)? Written { get; private set; }

    /// <summary>Writes one entry.</summary>
    /// <param name="list">The list that it stands in.</param>
    /// <param name="write">Writes it.</param>
    /// <exception cref="Measures.InputException">The entry cannot stand, the form was written
    /// already, or the books cannot be written.</exception>
    public async Task<T> One<T>(string list, Func<OpenBooks, T> write) where T : BookEntry
    {
        var entry = await books.WriteAsync(book => write(book.Once(key)));
        Written = (list, [entry.Id]);
        return entry;
    }

    /// <summary>Writes several entries of one list in one moment.</summary>
    /// <exception cref="Measures.InputException">As for <see cref="One"/>.</exception>
    public async Task<IReadOnlyList<T>> Several<T>(string list, Func<OpenBooks, IReadOnlyList<T>> write) where T : BookEntry
    {
        var entries = await books.WriteAsync(book => write(book.Once(key)));
        Written = (list, [.. entries.Select(e => e.Id)]);
        return entries;
    }
}
