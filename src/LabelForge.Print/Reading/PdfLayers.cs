using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>Which layers of a document print.</summary>
/// <remarks>
/// Optional content (ISO 32000-1, 8.11): the default configuration says which groups are off; where it names the event Print, a
/// group's usage says whether it prints. Groups are told apart by what their dictionaries say; of two that say the same, one
/// that prints counts for both, so that nothing is called hidden that may be seen.
/// </remarks>
internal sealed class PdfLayers
{
    private readonly ImmutableArray<DictionaryToken> off;
    private readonly Func<IToken, IToken> resolve;

    private PdfLayers(ImmutableArray<DictionaryToken> off, Func<IToken, IToken> resolve) => (this.off, this.resolve) = (off, resolve);

    /// <summary>The layers of a document.</summary>
    public static PdfLayers Of(PdfDocument document)
    {
        IToken Resolve(IToken token) =>
        token is IndirectReferenceToken reference ? document.Structure.GetObject(reference.Data).Data : token;
        DictionaryToken? Dictionary(DictionaryToken of, string key) =>
        of.TryGet(NameToken.Create(key), out IToken found) ? Resolve(found) as DictionaryToken : null;
        IEnumerable<IToken> Array(DictionaryToken of, string key) =>
        of.TryGet(NameToken.Create(key), out IToken found) && Resolve(found) is ArrayToken array ? array.Data : [];
        IEnumerable<DictionaryToken> Groups(DictionaryToken of, string key) => Array(of, key).Select(Resolve).OfType<DictionaryToken>();
        if (Dictionary(document.Structure.Catalog.CatalogDictionary, "OCProperties") is not { } properties
            || Dictionary(properties, "D") is not { } configuration)
            return new([], Resolve);
        var all = Groups(properties, "OCGs").ToArray();
        var off = Name(configuration, "BaseState") == "OFF"
            ? all.Except(Groups(configuration, "ON")).ToHashSet()
            : Groups(configuration, "OFF").ToHashSet();
        foreach (var group in Array(configuration, "AS").Select(Resolve).OfType<DictionaryToken>().Where(u => Name(u, "Event") == "Print")
            .SelectMany(u => Groups(u, "OCGs")))
        {
            if (Dictionary(group, "Usage") is { } usage
                && Dictionary(usage, "Print") is { } print
                && Name(print, "PrintState") is { } state)
                _ = state == "OFF" ? off.Add(group) : off.Remove(group);
        }
        return new([.. off.Where(o => all.Where(g => g.Equals(o)).All(off.Contains))], Resolve);
    }

    /// <summary>Whether what belongs to a group, or to a membership of groups, prints.</summary>
    public bool Prints(DictionaryToken group)
    {
        if (Name(group, "Type") != "OCMD")
            return !off.Any(o => o.Equals(group));
        if (!group.TryGet(NameToken.Create("OCGs"), out IToken named))
            return true;
        var on = (resolve(named) switch { ArrayToken several => several.Data.Select(resolve), var one => [one] }).OfType<DictionaryToken>()
            .Select(g => !off.Any(o => o.Equals(g))).ToArray();
        return on.Length == 0 || Name(group, "P") switch
        {
            "AllOn" => on.All(o => o),
            "AnyOff" => on.Any(o => !o),
            "AllOff" => on.All(o => !o),
            _ => on.Any(o => o),
        };
    }

    private static string? Name(DictionaryToken of, string key) => of.TryGet(NameToken.Create(key), out NameToken name) ? name.Data : null;
}
