using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace LabelForge.Records.Books;

/// <summary>Strikes an entry with a reason, and where something is set, adds the entry that stands instead.</summary>
public static class Correcting
{
    private static readonly string[] Fixed = ["Id", "By", "BatchId", "ReceiptId", "Frozen", "FrozenDigest", "WrittenAt", "Counted",
        "Difference", "Drawing"];

    // What an entry hangs on is named as people name it.
    private static readonly (string Field,
        string Name)[] Hangs = [("BatchId", "lot"), ("ReceiptId", "material lot"), ("ReceiptId", "from")];

    /// <summary>Corrects an entry.</summary>
    /// <param name="markets">The markets known: what turns out serious gets its day of reporting by their law.</param>
    /// <param name="list">One of <see cref="BookLists.All"/>.</param>
    /// <param name="id">The entry's number.</param>
    /// <param name="set">What becomes of which field, as text: <c>pieces</c> to <c>3</c>; empty strikes the entry for good.</param>
    /// <exception cref="InputException">There is no such entry, it is struck already, or the books would not balance.</exception>
    public static Correction Of(OpenBooks book, MarketBook markets, string list, int id, IReadOnlyDictionary<string, string> set,
        string reason, DateOnly on,
        string by, string? note = null)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (string.IsNullOrWhiteSpace(reason))
            throw new InputException("correction.no-reason");
        return book.Write((books, context) =>
        {
            var entry = Find(books, list, id);
            if (books.StruckBy(list, id) is { } earlier)
                throw (earlier.InsteadId is { } now
                    ? new InputException("books.struck-instead", ("list", list), ("id", id), ("on", $"{earlier.On:yyyy-MM-dd}"),
                        ("reason", earlier.Reason), ("now", now))
                    : new InputException("books.struck", ("list", list), ("id", id), ("on", $"{earlier.On:yyyy-MM-dd}"), ("reason", earlier.Reason)));
            BookEntry? instead = set.Count == 0 ? null : Changed(books, markets, entry, list, set);
            if (instead is not null)
            {
                context.Add((object)instead);
                context.SaveChanges();
            }
            var correction = new Correction
            {
                On = on,
                By = by,
                List = list,
                EntryId = id,
                InsteadId = instead?.Id,
                Reason = reason,
                Note = note,
            };
            context.Corrections.Add(correction);
            return correction;
        });
    }

    /// <summary>The entry of a list and number, struck or not.</summary>
    /// <exception cref="InputException">There is no such list, or no such entry in it.</exception>
    public static BookEntry Find(IBooks books, string list, int id)
    {
        if (!BookLists.All.Contains(list))
            throw new InputException("books.no-such-list", ("list", list), ("list-2", string.Join(", ", BookLists.All)));
        return books.Find(list, id)
            ?? throw (books.Last(list) is { } last
                ? new InputException("books.no-entry", ("list", list), ("id", id), ("last", last))
                : new InputException("books.list-empty", ("list", list), ("id", id)));
    }

    /// <summary>All entries of a list, struck or not.</summary>
    public static IReadOnlyList<BookEntry> All(BooksSnapshot snapshot, string list) =>
        EntryKind.Of(list) is { } kind ? snapshot.AllOf(kind)
            : throw new InputException("books.no-such-list", ("list", list), ("list-2", string.Join(", ", BookLists.All)));

    private static BookEntry Changed(IBooks books, MarketBook markets, BookEntry entry, string list,
        IReadOnlyDictionary<string, string> set)
    {
        var type = entry.GetType();
        var json = JsonSerializer.SerializeToNode(entry, type)!.AsObject();
        json["Id"] = 0;
        json.Remove("WrittenAt");
        var fields = type.GetProperties().Where(p => !Fixed.Contains(p.Name) && p.SetMethod is { IsPublic: true })
            .ToDictionary(p => p.Name, StringComparer.OrdinalIgnoreCase);
        foreach (var (name, text) in set)
        {
            if (fields.TryGetValue(name.Replace(" ", "").Replace("-", ""), out var field))
                json[field.Name] = Value(field, name, text);
            else if (Hangs.FirstOrDefault(h => h.Name == name.ToLowerInvariant().Replace('-', ' ')) is { Field: { } hangs }
                && type.GetProperty(hangs) is { } on)
                json[hangs] = HangsOn(books, on, text);
            else
                throw new InputException("books.no-such-field", ("list", list), ("name", name),
                    ("list-2",
                        string.Join(", ",
                            fields.Keys.Select(Words)
                                .Concat(Hangs.Where(h => type.GetProperty(h.Field) is not null).Select(h => h.Name)))));
        }
        var changed = (BookEntry)json.Deserialize(type)!;
        // What turns out serious gets its day of reporting; it runs from the day the maker was told.
        return changed is Complaint complaint
            && !set.Keys
                .Any(k => k.Replace(" ", "").Replace("-", "").Equals(nameof(Complaint.ReportBy), StringComparison.OrdinalIgnoreCase))
            ? complaint.With(complaint.Serious ? StockMovements.LastDayToReport(markets, complaint.On) : null)
            : changed;
    }

    private static JsonNode? HangsOn(IBooks books, PropertyInfo field, string text)
    {
        if (text.Length == 0 && Nullable.GetUnderlyingType(field.PropertyType) is not null)
            return null;
        if (field.Name == "BatchId")
            return books.BatchOf(Lots.LotCode.Parse(text) is { IsValue: true } code ? code.Value.ToString() : text).Id;
        return text.Length > 1
            && text[0] is 'M' or 'm'
            && PlainFigure.Whole(text[1..]) is { } number
            ? books.ReceiptOf(number).Id
            : throw new InputException("call.not-a-material-lot", ("text", text));
    }

    private static JsonNode? Value(PropertyInfo field, string name, string text)
    {
        var type = Nullable.GetUnderlyingType(field.PropertyType) ?? field.PropertyType;
        if (text.Length == 0 && (type != field.PropertyType || type == typeof(string)))
            return null;
        if (type == typeof(int) && PlainFigure.Whole(text) is { } whole)
            return whole;
        if (type == typeof(decimal)
            && PlainFigure.Read(text) is { } figure)
            return figure;
        if (type == typeof(DateOnly)
            && IsoDay.Read(text) is { } day)
            return day.ToIso();
        if (type == typeof(bool) && text is "yes" or "no")
            return text == "yes";
        return type == typeof(string)
            ? text
            : throw new InputException(type == typeof(DateOnly)
                ? "books.not-a-day"
                : type == typeof(bool)
                ? "books.not-yes-or-no"
                : "books.not-a-plain-figure", ("text", text), ("name", name));
    }

    private static string Words(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) && i > 0
            ? $" {char.ToLowerInvariant(c)}"
            : char.ToLowerInvariant(c).ToString()));
}
