using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace LabelForge.Records.Books;

/// <summary>A column of a list, as it is written and as it is read back.</summary>
/// <param name="Heading">What the list calls it.</param>
/// <param name="Field">The entry's field; null where it is reckoned, as what is left, and not read back.</param>
internal sealed record EntryColumn(string Heading, PropertyInfo? Field)
{
    // Where a list's word is not the field's.
    private static readonly Dictionary<string, string> OtherNames = new()
    {
        ["yield g"] = nameof(Closing.YieldGrams),
        ["file"] = nameof(Attachment.FileName),
        ["holds until"] = nameof(Attachment.BestBefore),
        ["entry"] = nameof(Correction.EntryId),
        ["instead"] = nameof(Correction.InsteadId),
    };

    // Nothing written there says none, or no.
    private static readonly string[] NoneWhereEmpty = ["rejected", "back on shelf", "serious"];

    /// <summary>The column of a heading.</summary>
    /// <param name="heading">The heading: a field's words, as <c>pieces planned</c>.</param>
    /// <param name="fields">The entry's fields.</param>
    public static EntryColumn Of(string heading, PropertyInfo[] fields)
    {
        var name = OtherNames.GetValueOrDefault(heading) ?? heading.Replace(" ", "", StringComparison.Ordinal);
        return new EntryColumn(heading, fields.FirstOrDefault(f => f.Name.Equals(name, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>Whether a list that is read back must have it.</summary>
    public bool IsNeeded { get; } = Field?.IsDefined(typeof(RequiredMemberAttribute)) is true && !NoneWhereEmpty.Contains(Heading);

    /// <summary>What stands in it of an entry.</summary>
    public object? Cell(BookEntry entry) => Field?.GetValue(entry) is var value && value is bool answer ? answer ? "yes" : "no" : value;

    /// <summary>Sets an entry's field to what a row has.</summary>
    /// <exception cref="InputException">It cannot be read, or is needed and missing.</exception>
    public void Read(ListRow row, BookEntry entry)
    {
        if (Field is null)
            return;
        var type = Nullable.GetUnderlyingType(Field.PropertyType) ?? Field.PropertyType;
        object? value = type == typeof(int) ? row.Whole(Heading)
            : type == typeof(DateOnly) ? row.Day(Heading)
            : type == typeof(bool) ? row.Text(Heading) is "yes"
            : type != typeof(decimal) ? row.Text(Heading)
            : Heading switch
            {
                "grams" or "yield g" or "amount" => row.Grams(Heading),
                "difference" => row.Signed(Heading),
                _ => row.Figure(Heading),
            };
        if (value is null && IsNeeded)
            throw row.Refuse("import.empty", ("column", Heading));
        if (value is not null)
            Set(Field, entry, value);
    }

    /// <summary>Sets a field of an entry that is being made.</summary>
    public static void Set(PropertyInfo field, BookEntry entry, object? value) =>
        field.SetValue(entry, value, BindingFlags.DoNotWrapExceptions, null, null, CultureInfo.InvariantCulture);
}
