using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Levels;

namespace LabelForge.Declarations;

/// <summary>Gives materials what is usual of them in products of a kind, so that an estimate can go by it.</summary>
internal static class UsualShares
{
    private const int MostSources = 3;

    /// <summary>The same materials, each constituent with its usual share.</summary>
    /// <param name="parts">The materials, under the dictionary's names.</param>
    /// <param name="product">The id of the kind of product.</param>
    /// <param name="levels">What is usual.</param>
    public static ImmutableArray<MaterialPart> Given(ImmutableArray<MaterialPart> parts, string product, UsualLevels levels)
    {
        var form = levels.FormOf(product);
        return [.. parts.Select(p => p.Constituents.Length < 2 ? p : Given(p, form, levels))];
    }

    private static MaterialPart Given(MaterialPart part, ProductForm form, UsualLevels levels)
    {
        string[] names = [.. part.Constituents.Select(c => NanoName.Bare(c.Name))];
        var usual = levels.Of(names, form, part.Listed != ListedOrder.None);
        return part with
        {
            Constituents = [.. part.Constituents.Select((c, at) => c with { Usual = new UsualShare(usual[at], Sources(names[at])) })],
        };

        ImmutableArray<string> Sources(string name) =>
            [.. levels.Published(name, form).Where(l => !l.IsMaximum).Select(l => $"{l.Percent:0.####} %: {l.Source}").Distinct()
                .Take(MostSources)];
    }
}
