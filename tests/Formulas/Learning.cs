using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using LabelForge.Ingredients.Levels;

namespace LabelForge.Formulas;

/// <summary>Learns usual levels by family and by place from formulas, as the two tables hold them.</summary>
internal static class Learning
{
    // A family with few figures is pulled toward 1.5 % as by two more formulas, and its levels in one form toward its own as by six.
    private const double Start = 1.5;
    private const double OfFamily = 2;
    private const double OfForm = 6;
    private const int Places = 24;

    /// <summary>family-levels.csv.</summary>
    public static string FamilyTable(IEnumerable<PublishedFormula> formulas, UsualLevels levels)
    {
        var figures = formulas
            .SelectMany(f => f.Ingredients
                .Select(i => (Family: levels.FamilyOf(i.Name), Form: levels.FormOf(f.Product), Log: Math.Log(i.Percent))))
            .ToLookup(f => f.Family);
        var text = new StringBuilder("family,form,percent,n\n");
        foreach (var family in Families)
        {
            var all = figures[family].ToArray();
            var own = (all.Sum(f => f.Log) + OfFamily * Math.Log(Start)) / (all.Length + OfFamily);
            Row(family, ProductForm.Any, own, all.Length);
            foreach (var form in all.GroupBy(f => f.Form).OrderBy(g => g.Key))
                Row(family, form.Key, (form.Sum(f => f.Log) + OfForm * own) / (form.Count() + OfForm), form.Count());
        }
        return text.ToString();

        void Row(string family, ProductForm form, double log, int n) =>
            text.Append(CultureInfo.InvariantCulture, $"{family},{form.ToString().ToLowerInvariant()},{Math.Exp(log):0.####},{n}\n");
    }

    /// <summary>place-levels.csv: what stands in each place, water aside; never more than in the place before.</summary>
    public static string PlaceTable(IEnumerable<PublishedFormula> formulas)
    {
        var figures = formulas
            .SelectMany(f => f.Ingredients
                .Select((i, at) => (i.Name, Place: at, WaterFirst: f.Ingredients[0].Name == "Water", Log: Math.Log(i.Percent))))
            .Where(f => f.Name != "Water")
            .ToLookup(f => (f.Place, f.WaterFirst), f => f.Log);
        var text = new StringBuilder("place,water first,other\n");
        var (first, other) = (Curve(true), Curve(false));
        for (var at = 0; at < Places; at++)
            text.Append(CultureInfo.InvariantCulture, $"{at + 1},{Math.Exp(first[at]):0.####},{Math.Exp(other[at]):0.####}\n");
        return text.ToString();

        // Lists that begin otherwise count for a third; where few figures are, seven tenths of the place before.
        ImmutableArray<double> Curve(bool waterFirst)
        {
            var curve = ImmutableArray.CreateBuilder<double>(Places);
            for (var at = 0; at < Places; at++)
            {
                var (own, like) = (figures[(at, waterFirst)], figures[(at, !waterFirst)]);
                var before = at == 0 ? Math.Log(30) : curve[at - 1] + Math.Log(0.7);
                var mean = (own.Sum() + 0.3 * like.Sum() + 3 * before) / (own.Count() + 0.3 * like.Count() + 3);
                curve.Add(at == 0 ? mean : Math.Min(mean, curve[at - 1]));
            }
            return curve.ToImmutable();
        }
    }

    private static IEnumerable<string> Families =>
        IngredientDictionary.Shipped.Levels.FamilyNames;
}
