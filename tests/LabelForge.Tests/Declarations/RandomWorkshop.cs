using System.Globalization;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;
using LabelForge.Tests.Composition;

namespace LabelForge.Tests.Declarations;

/// <summary>A random workshop that some true composition meets, in its files, and the same as lists for a solver.</summary>
internal sealed class RandomWorkshop : IDisposable
{
    public static readonly string[] AllKinds = ["strict", "label", "none", "loss", "blend", "same name", "soap", "variant"];

    // As written, and as each market prints it. The US knows one silica; the EU, the UK from its
    // own date, and Canada name two lavenders alike.
    private static readonly (string[] Written, string Us, string Eu, string Ca, bool IsColour)[] Pool =
    [
        (["Water", "Aqua"], "Water", "Aqua", "Aqua/Water/Eau", false),
        (["Glycerin"], "Glycerin", "Glycerin", "Glycerin", false),
        (["Castor Oil"], "Ricinus Communis (Castor) Seed Oil", "Ricinus Communis Seed Oil", "Ricinus Communis Seed Oil", false),
        (["Silica"], "Silica", "Silica", "Silica", false),
        (["Silica [nano]", "silica (nano)"], "Silica", "Silica [nano]", "Silica", false),
        (["Lavandula Angustifolia Oil"], "Lavandula Angustifolia (Lavender) Oil", "Lavandula Oil/Extract", "Lavandula Oil/Extract", false),
        (["Lavandula Hybrida Oil"], "Lavandula Hybrida Oil", "Lavandula Oil/Extract", "Lavandula Oil/Extract", false),
        (["CI 77491"], "Iron Oxides", "CI 77491", "CI 77491", true),
        (["CI 77492"], "Iron Oxides", "CI 77492", "CI 77492", true),
        (["Wild Moor Extract", "WILD MOOR EXTRACT", "wild  moor extract"], "Wild Moor Extract", "Wild Moor Extract", "Wild Moor Extract",
            false),
        (["Sodium Chloride"], "Sodium Chloride", "Sodium Chloride", "Sodium Chloride", false),
        (["Citric Acid"], "Citric Acid", "Citric Acid", "Citric Acid", false),
    ];

    private readonly Random _random;
    private readonly MakerBench _bench = new();
    private readonly MaterialPart[] _lists;
    private readonly int[] _grams;
    private readonly bool _isBlend;
    private readonly bool _isSoap;
    private readonly string[] _variants;
    private readonly string _loss = "";
    private readonly decimal _lost;
    private readonly bool _allLost;
    private readonly string _moor;

    public RandomWorkshop(Random random)
    {
        _random = random;
        // Lists from a hidden truth; their names I0 ... stand for the pool's.
        _lists = RandomProducts.Of(random);
        _grams = [.. _lists.Select(_ => random.Next(20, 600))];
        _isBlend = _lists.Length > 2 && random.Next(2) == 0;
        _isSoap = random.Next(4) == 0;
        _variants = !_isSoap && random.Next(4) == 0 ? ["", "More"] : [""];
        _moor = "";
        for (var m = 0; m < _lists.Length; m++)
        {
            var lines = _lists[m].Constituents.Select(c => (Written: Written(c.Name), c.Share)).ToArray();
            if (_moor.Length == 0)
                _moor = lines.FirstOrDefault(l => l.Written.Contains("moor", StringComparison.OrdinalIgnoreCase)).Written ?? "";
            _bench.Material($"m{m}", "additive", "\n" + string.Concat(lines.Select(l => $"  - {Line(l.Written, l.Share)}\n")),
                $"listed: {_lists[m].Listed.ToString().ToLowerInvariant()}\n");
        }
        var total = Total;
        if (random.Next(3) == 0 && Certain() is { } certain)
        {
            _allLost = certain.Low == certain.High && random.Next(2) == 0;
            _lost = Math.Floor(certain.Low * total * (_allLost ? 1 : 0.5m) * 10_000) / 10_000;
            _allLost &= _lost == certain.Low * total;
            _loss = _lost > 0 && _lost < 0.8m * total ? certain.Name : "";
        }
        Write();
    }

    private decimal SoapGrams => _isSoap ? 300 : 0;

    private decimal Total => _grams.Sum() + SoapGrams + (_isSoap ? 40 : 0);

    public IEnumerable<string> Kinds(string variant, MaterialPart[] parts, string? lost)
    {
        foreach (var part in parts.Take(_lists.Length).Select(p => p.Listed).Distinct())
            yield return part.ToString().ToLowerInvariant();
        if (lost is not null)
            yield return _allLost ? "all lost" : "loss";
        if (_isBlend)
            yield return "blend";
        if (_isSoap)
            yield return "soap";
        if (variant.Length > 0)
            yield return "variant";
        if (parts.Any(p => p.Constituents.GroupBy(c => c.Name).Any(g => g.Count() > 1)))
            yield return "same name";
    }

    /// <summary>Each product as lists under the market's names; the variant's name is empty for the recipe itself.</summary>
    public IEnumerable<(string Variant, MaterialPart[] Parts, string? Lost, decimal Share)> Products(Market market)
    {
        foreach (var variant in _variants)
        {
            decimal[] grams = [.. _grams.Select((g, m) => variant.Length > 0 && m == 0 ? 2m * g : g)];
            var total = grams.Sum() + Total - _grams.Sum();
            var parts =
                _lists.Select((p,
                    m) => p with
                    {
                        ShareOfProduct = grams[m] / total,
                        Constituents = [.. p.Constituents.Select(c => c with { Name = Printed(c.Substance, market) })],
                    }).ToList();
            if (_isSoap)
                parts.Add(Soap(total, market));
            yield return (variant, [.. parts], _loss.Length == 0 ? null : Printed(_loss, market), _loss.Length == 0 ? 0 : _lost / total);
        }
    }

    public Declaration Declare(Market market, string variant)
    {
        var workshop = _bench.Workshop;
        var recipe = workshop.Recipe("bar");
        if (variant.Length > 0)
            recipe = recipe.Variant(variant);
        return DeclarationBuilder.Build(workshop, BatchFormula.Of(workshop, recipe with { Variants = [] }), ProductKindOf.Recipe(recipe),
            market, new DateOnly(2026, 11, 25));
    }

    public void Dispose() => _bench.Dispose();

    // What surely is there, so that the loss takes nothing from what is only perhaps there.
    private (string Name, decimal Low, decimal High)? Certain()
    {
        var proof = Prover.Prove([.. _lists.Select((p, m) => p with { ShareOfProduct = _grams[m] / (decimal)_grams.Sum() })]);
        var sure = proof.Ingredients.Where(i => i.Low > 0.001m && i.Part != LabelForge.Composition.Part.Colour).ToArray();
        if (sure.Length == 0)
            return null;
        var chosen = sure[_random.Next(sure.Length)];
        var scale = _grams.Sum() / Total;
        return (chosen.Name, chosen.Low * scale, chosen.High * scale);
    }

    private void Write()
    {
        var uses = _lists.Select((_, m) => ($"m{m}", $"{_grams[m]} g")).ToList();
        if (_isBlend)
        {
            // The last two are mixed first, and the first of them goes in by itself as well.
            var (a, b) = (_grams.Length - 2, _grams.Length - 1);
            _bench.Write("materials/blend.yaml", string.Create(CultureInfo.InvariantCulture,
                $"name: Blend\nkind: base\nmade from:\n  - {{ use: m{a}, amount: {_grams[a] / 2m} g }}\n  - {{ use: m{b}, amount: {_grams[b]} g }}\n"));
            uses = [.. uses.Take(a), ($"m{a}", string.Create(CultureInfo.InvariantCulture, $"{_grams[a] / 2m} g")),
                ("blend", string.Create(CultureInfo.InvariantCulture, $"{_grams[a] / 2m + _grams[b]} g"))];
        }
        if (_isSoap)
        {
            _bench.Material("olive", "oil", "Olive Oil").Material("coconut", "oil", "Coconut Oil")
                .Material("lye", "lye", "Sodium Hydroxide", "purity: 100 %\n");
            uses.AddRange([("olive", "200 g"), ("coconut", "100 g"), ("lye", "40 g")]);
        }
        var more = (_isSoap ? "declare as: formed\n" : "")
            + (_loss.Length > 0 ? string.Create(CultureInfo.InvariantCulture, $"loss: {_lost} g {Pool[Index(_loss)].Written[0]}\n") : "")
            + (_variants.Length > 1
                ? string.Create(CultureInfo.InvariantCulture,
                    $"variants:\n  - {{ name: More, replace: {{ m0: {{ use: m0, amount: {2 * _grams[0]} g }} }} }}\n  - {{ name: Same, "
                        + $"replace: {{ m0: {{ use: m0, amount: {_grams[0]} g }} }} }}\n")
                : "");
        _bench.Recipe("body-butter", more, [.. uses]);
    }

    private MaterialPart Soap(decimal total, Market market)
    {
        var workshop = _bench.Workshop;
        var charge = SoapCharge.In(workshop, BatchFormula.Of(workshop, workshop.Recipe("bar")))!;
        var made = SoapMade.Of(charge).GroupBy(s => s.Name);
        return new MaterialPart("soap", charge.Grams / total, ListedOrder.None, [.. made.Select(g => new Constituent(
            IngredientDictionary.Shipped.Find(g.Key)!.NameIn(market),
            new ShareRange(Share.FromFraction(Math.Clamp(g.Sum(s => s.Low) / charge.Grams, 0, 1)),
                Share.FromFraction(Math.Clamp(g.Sum(s => s.High) / charge.Grams, 0, 1))), false))]);
    }

    private string Written(string name)
    {
        var written = Pool[Index(name)].Written;
        return written[_random.Next(written.Length)];
    }

    private static string Line(string written, ShareRange share) => share == ShareRange.Unknown ? $"\"{written}\""
        : string.Create(CultureInfo.InvariantCulture, $"\"{written}\": {share.Low.Percent}-{share.High.Percent} %");

    private string Printed(string name, Market market)
    {
        var (written, us, eu, ca, _) = Pool[Index(name)];
        var label = market.Id switch
        {
            "us" => us,
            "ca" => ca,
            // The UK's list of allergens does not hold the oils themselves.
            "uk" when us.StartsWith("Lavandula", StringComparison.Ordinal) => IngredientDictionary.Shipped.Find(us)!.Eu,
            _ => eu,
        };
        return written.Length == 3 ? _moor : label;
    }

    // I9 and I11 are the colours of the random lists.
    private static int Index(string name) =>
        int.Parse(name[1..], CultureInfo.InvariantCulture) switch { 9 => 7, 11 => 8, 7 => 9, 8 => 10, 10 => 11, var n => n % Pool.Length };
}
