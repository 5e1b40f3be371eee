using LabelForge.Composition;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>The names of one batch: which mean one substance, and what each substance is called on the label.</summary>
internal sealed class BatchNames(NameIdentity identity, Func<string, string> nameOf)
{
    private readonly Dictionary<string, string> _nameOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _printed = new(NameIdentity.Same);

    /// <summary>Which written names mean one substance.</summary>
    public NameIdentity Identity => identity;

    /// <summary>The substances met so far that go by each name.</summary>
    public ImmutableDictionary<string, ImmutableArray<string>> Keys =>
        _nameOf.GroupBy(n => n.Value, n => n.Key, StringComparer.Ordinal).ToImmutableDictionary(g => g.Key, g => g.ToImmutableArray());

    /// <summary>The name on the label of what is written so.</summary>
    public string Of(string written)
    {
        var key = identity.KeyOf(written);
        if (_nameOf.TryGetValue(key, out var name))
            return name;
        return _nameOf[key] = Printed(nameOf(key));
    }

    /// <summary>The name on the label of an allergen: that of an ingredient which it is, else its own.</summary>
    public string Of(AllergenTotal total) =>
        _nameOf.FirstOrDefault(n => total.Entry is not null && IsEntry(n.Key, total.Entry)).Value ?? Printed(total.Name);

    /// <summary>A material with its constituents under the names on the label.</summary>
    public MaterialPart Printed(MaterialPart part) => part with
    {
        Constituents = [.. part.Constituents.Select(c => c with { Name = Of(c.Name) })],
    };

    // Two spellings of one name on the label are one name.
    private string Printed(string name)
    {
        _printed.TryAdd(name, name);
        return _printed[name];
    }

    private bool IsEntry(string key, FragranceAllergen entry) =>
        identity.Dictionary.Allergens.Find(NanoName.Bare(key)) == entry;
}
