using System.Collections.Immutable;

namespace LabelForge.Ingredients;

/// <summary>An ingredient as the dictionary knows it.</summary>
public sealed record Ingredient
{
    /// <summary>The name on a label in the United States (21 CFR 701.3(c)).</summary>
    public required string Us { get; init; }

    /// <summary>The name on a label in the European Union (Regulation (EC) No 1223/2009, Art. 19(1)(g) and Art. 33).</summary>
    public required string Eu { get; init; }

    /// <summary>The International Nomenclature name where it differs from both.</summary>
    public string? Inci { get; init; }

    /// <summary>The form that Canada permits in place of English and French, or null.</summary>
    public string? Ca { get; init; }

    /// <summary>CAS numbers.</summary>
    public ImmutableArray<CasNumber> Cas { get; init; } = [];

    /// <summary>The EC number, or null.</summary>
    public string? Ec { get; init; }

    /// <summary>The Colour Index number's digits, or null.</summary>
    public string? ColourIndex { get; init; }

    /// <summary>What people say.</summary>
    public ImmutableArray<string> Everyday { get; init; } = [];

    /// <summary>What it does in a product.</summary>
    public ImmutableArray<string> Roles { get; init; } = [];

    /// <summary>colourant, botanical, nano, allergen, animal.</summary>
    public ImmutableArray<string> Flags { get; init; } = [];

    /// <summary>Where the entry was checked.</summary>
    public required string Source { get; init; }

    /// <summary>Whether it is a colour additive.</summary>
    public bool IsColourant => Flags.Contains("colourant");

    /// <summary>One name for one substance: colours that share a US name are told apart by their Colour Index numbers.</summary>
    public string Key => IsColourant && ColourIndex is not null ? $"{Us} (CI {ColourIndex})" : Us;

    /// <summary>Every name by which it may be looked up.</summary>
    public IEnumerable<string> Names => new[] { Key, Us, Eu, Inci, Ca, ColourIndex }.Concat(Everyday).OfType<string>().Where(n => n.Length > 0);
}
