using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Quantities;

namespace LabelForge.UseCases;

/// <summary>How somebody else's label is to be judged, in the words of the person who asks.</summary>
/// <param name="On">The day to judge by.</param>
/// <param name="Market">The market.</param>
/// <param name="Product">The kind of product, as <c>soap-bar</c>; empty or null where the label itself is to say.</param>
/// <param name="Panel">The principal display panel, as <c>2.5x3.5in</c>; empty or null where the label itself is to say.</param>
/// <param name="SoldAs"><c>soap</c> or <c>cosmetic</c>; empty or null where the words are to say.</param>
/// <param name="Facts">What the maker has settled of the product, as <c>adults-only spray=no</c>; empty or null where nothing is.</param>
public sealed record LabelQuestion(DateOnly On, Market Market, string? Product = null, string? Panel = null, string? SoldAs = null,
    string? Facts = null);

/// <summary>Judges a label that was made elsewhere, by its words.</summary>
public static class CheckLabel
{
    /// <summary>Reads a label and holds it against the rules; where there are several in one
    /// file, what is found on each stands together.</summary>
    /// <param name="text">The label's words, of a text or a PDF.</param>
    /// <param name="question">How it is to be judged.</param>
    /// <param name="dictionary">The names known.</param>
    /// <returns>What was read on the first, with where it stands, and what was found.</returns>
    /// <exception cref="InputException">The question names what is not known.</exception>
    public static (LabelStatement Reading, CheckReport Report) Run(LabelText text, LabelQuestion question, IngredientDictionary dictionary)
    {
        var each = Each(text, question, dictionary);
        return each.Length == 1 ? (each[0].Reading, each[0].Report)
            : (each[0].Reading,
                each[0].Report with
                {
                    Findings = [.. each.SelectMany(e => e.Report.Findings.Select(f => f with { Where = $"{e.Name}: {f.Where}" }))
                        .OrderBy(f => f.Severity)],
                });
    }

    /// <summary>Reads every label of a file, each product's by itself, and holds each against the rules.</summary>
    /// <param name="text">The words, of a text or a PDF.</param>
    /// <param name="question">How each is to be judged.</param>
    /// <param name="dictionary">The names known.</param>
    /// <returns>The labels in order, each with what its product is called.</returns>
    /// <exception cref="InputException">The question names what is not known.</exception>
    public static ImmutableArray<(string Name, LabelStatement Reading, CheckReport Report)> Each(LabelText text, LabelQuestion question,
        IngredientDictionary dictionary)
    {
        var kind = Given(question.Product) is { } product ? ProductKinds.Find(product).OrRefuse() : null;
        var panel = Given(question.Panel) is { } shown ? Quantities.Panel.Parse(shown).OrRefuse() : null;
        SoldAs? sold = question.SoldAs switch { "soap" => Recipes.SoldAs.Soap, "cosmetic" => Recipes.SoldAs.Cosmetic, _ => null };
        var first = LabelStatement.Read(text, dictionary);
        return [.. first.Others.Prepend(first)
            .Select((reading, i) => ($"label {i + 1}{(reading.Identity is { } identity ? $", {identity.Written}" : "")}", reading,
            LabelCheck.Run(LabelJudgement.Of(reading, kind, sold, panel, question.On, Settled(question.Facts)),
                question.Market)))];
    }

    /// <summary>Judges labels one after the other, as those of a folder. One that cannot be read is a row of its own and stops no
    /// other; of a file that holds several each is a row.</summary>
    /// <param name="labels">What each is called, and how its words are read.</param>
    /// <param name="question">How each is to be judged.</param>
    /// <param name="dictionary">The names known.</param>
    public static ImmutableArray<JudgedProduct> All(IEnumerable<(string Name, Func<LabelText> Read)> labels, LabelQuestion question,
        IngredientDictionary dictionary) => [.. labels.SelectMany(l => Rows(l.Name, l.Read, question, dictionary))];

    private static IEnumerable<JudgedProduct> Rows(string name, Func<LabelText> read, LabelQuestion question,
        IngredientDictionary dictionary)
    {
        try
        {
            var each = Each(read(), question, dictionary);
            return [
                .. each.Select(l => new JudgedProduct(name + (each.Length > 1 ? $", {l.Name}" : ""), question.Market, l.Report, null))];
        }
        catch (InputException e)
        {
            return [new(name, question.Market, null, e.Problem)];
        }
        catch (System.Text.RegularExpressions.RegexMatchTimeoutException)
        {
            return [new(name, question.Market, null, new Problem(name, 0, "reading.too-slow"))];
        }
    }

    private static ProductFacts Settled(string? facts) => (Given(facts) ?? "").Split([' ', ','], StringSplitOptions.RemoveEmptyEntries)
        .Select(f => ProductFacts.Parse(f).OrRefuse()).Aggregate(ProductFacts.None, (all, one) => all.With(one.Fact, one.So));

    private static string? Given(string? words) => string.IsNullOrWhiteSpace(words) ? null : words;
}
