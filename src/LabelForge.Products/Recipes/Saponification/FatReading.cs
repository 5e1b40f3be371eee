using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>Reads an oil, butter, wax or fatty acid for the making of soap.</summary>
internal static class FatReading
{
    /// <summary>What of a material takes up alkali, as the fat in so many grams of it; null where
    /// nothing does. The rest stands by.</summary>
    /// <exception cref="InputException">Nothing says how much alkali it takes up, or what part of it does.</exception>
    public static (Fat? Fat, IEnumerable<Bystander> Bystanders) Of(Material material, decimal grams,
        IngredientDictionary dictionary)
    {
        var all = material.Contains.Select(c => new Named(c, dictionary.Find(c.Name))).ToArray();
        if (TheFat(material, all) is not { } fat)
            return (null, [.. all.Select(c => new Bystander(c.Key, grams * (all.Length == 1 ? 1 : Figure(material, c))))]);
        var others = all.Where(c => c != fat).Select(c => (c.Key, Share: Figure(material, c))).ToArray();
        var left = 1 - others.Sum(o => o.Share);
        if (left <= 0)
            throw Refuse(material, fat.Line, "soap.nothing-left", ("name", fat.Key));
        var soap = SoapTable.Find(fat.Key) ?? new SoapEntry(fat.Key, FatKind.Triglyceride, null, null);
        return (new Fat(material, fat.Key, grams * left, Value(material, fat, left), material.Saponification is not null,
            soap.Called(material.SoapName)),
            [.. others.Select(o => new Bystander(o.Key, grams * o.Share))]);
    }

    private static Named? TheFat(Material material, Named[] all)
    {
        if (material.Saponification is { High: 0 })
            return null;
        var fats = all.Where(c => c.IsFat).ToArray();
        if (fats.Length > 1)
        {
            throw Refuse(material, fats[1].Line, "soap.several-fats", ("list", string.Join(", ", fats.Select(f => f.Key))));
        }
        if (fats.Length == 1)
            return fats[0];
        if (all.All(c => c.IsInert))
            return null;
        return all.Length == 1 ? all[0] : throw NoValue(material, all[0]);
    }

    // A certificate's value is of the material as bought, what stands by included.
    private static SaponificationValue Value(Material material, Named fat, decimal left) =>
        material.Saponification is { } own
            ? new(own.Low / left, own.High / left)
            : fat.Entry?.Saponification ?? throw NoValue(material, fat);

    private static decimal Figure(Material material, Named constituent) => constituent.Written.Share is { IsExact: true } share
        ? share.Low.Fraction
        : throw Refuse(material, constituent.Line, "soap.fat-share-unknown", ("name", constituent.Key),
            ("written", constituent.Written.Name));

    private static InputException NoValue(Material material, Named constituent) =>
        Refuse(material, constituent.Line, "soap.no-saponification-value");

    private static InputException Refuse(Material material, int line, string code,
        params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(material.File, line, "soap.fat", ("material", material.Id), ("inner", new Problem(code, arguments)));

    private sealed record Named(DeclaredConstituent Written, Ingredient? Entry)
    {
        public string Key => Entry?.Key ?? Written.Name;

        public int Line => Written.Line;

        public bool IsInert => SoapTable.Find(Key) is { Kind: FatKind.Inert };

        public bool IsFat => !IsInert && (Entry?.Saponification is not null || SoapTable.Find(Key) is not null);
    }
}
