using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Tests.Composition;

namespace LabelForge.Tests.Declarations;

/// <summary>
/// Random workshops in their files, declared whole: lists of all three kinds, blends, losses, names that print alike, spellings,
/// soap, variants. Bounds and pairs are those of linear programs written from the recipe by this test.
/// </summary>
public class DeclaredAgainstSolverTests
{
#if MUTATION
    private const int Products = 40;
#else
    private const int Products = 500;
#endif
    private const double Percent = 1e-6;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void What_a_workshop_declares_is_what_a_linear_solver_finds(int seed)
    {
        var random = new Random(seed);
        var seen = new Dictionary<string, int>();
        for (var product = 0; product < Products; product++)
        {
            using var workshop = new RandomWorkshop(random);
            var market = MarketBook.Shipped.All.ElementAt(random.Next(4));
            foreach (var (variant, parts, lost, share) in workshop.Products(market))
            {
                var about = $"seed {seed}, product {product} {variant}, {market}";
                using var oracle = new SolverOracle(parts, lost, (double)share);
                var declaration = workshop.Declare(market, variant);
                Compare(oracle, declaration, about);
                foreach (var kind in workshop.Kinds(variant, parts, lost))
                    seen[kind] = seen.GetValueOrDefault(kind) + 1;
            }
        }
        Assert.All(RandomWorkshop.AllKinds,
            kind => Assert.True(seen.GetValueOrDefault(kind) >= Products / 100, $"{kind}: {seen.GetValueOrDefault(kind)}"));
    }

    private static void Compare(SolverOracle oracle, Declaration declaration, string about)
    {
        var proof = declaration.Composition!.Proof;
        Assert.True(oracle.Names.Where(n => oracle.High(n) > Percent).Order(StringComparer.Ordinal)
            .SequenceEqual(declaration.Ingredients.Select(i => i.Name).Order(StringComparer.Ordinal)), about);
        for (var i = 0; i < declaration.Ingredients.Length; i++)
        {
            var declared = declaration.Ingredients[i];
            Assert.True(Math.Abs(oracle.Low(declared.Name) - (double)declared.Low) < Percent,
                $"{about}: low of {declared.Name}: {oracle.Low(declared.Name)}, {declared.Low}");
            Assert.True(Math.Abs(oracle.High(declared.Name) - (double)declared.High) < Percent,
                $"{about}: high of {declared.Name}: {oracle.High(declared.Name)}, {declared.High}");
            for (var j = i + 1; j < declaration.Ingredients.Length; j++)
            {
                if (declared.Part == LabelForge.Composition.Part.Colour
                    || declaration.Ingredients[j].Part == LabelForge.Composition.Part.Colour)
                    continue;
                var safe = oracle.MayPrecede(declared.Name, declaration.Ingredients[j].Name);
                Assert.True(safe == proof.MayPrecede(i, j),
                    $"{about}: {declared.Name} before {declaration.Ingredients[j].Name}: solver {safe}");
                Assert.Equal(!safe,
                    declaration.Unsettled.Any(u => u.First == declared.Name && u.Second == declaration.Ingredients[j].Name));
            }
        }
    }
}
