using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>
/// What the checks look at: what a label says, what the product is made of where that is known, and the rules of the market
/// and the day; and what they have found. A check says that a rule applies and fills in its sentences. Whether the rule binds
/// here, today and for this kind of product is the rule's own data.
/// </summary>
public sealed class CheckCase
{
    private readonly List<Finding> found = [];

    /// <summary>A label to be checked.</summary>
    /// <param name="label">What it says.</param>
    /// <param name="rules">The rules of the market and the day.</param>
    public CheckCase(LabelStatement label, RulesOf rules) => (Label, Rules) = (label, rules);

    /// <summary>What the label says.</summary>
    public LabelStatement Label { get; }

    /// <summary>The names known, and what is known of them.</summary>
    public IngredientDictionary Dictionary => Label.Dictionary;

    /// <summary>The rules and figures in force.</summary>
    public RulesOf Rules { get; }

    /// <summary>The market.</summary>
    public Market Market => Rules.Market;

    /// <summary>What the product is made of, where the label is that of a recipe; else names must do.</summary>
    public RecipeFacts? Product { get; init; }

    /// <summary>The kind of product: as given, or as the label's identity says; null where neither tells.</summary>
    public ProductKind? Kind { get; init; }

    /// <summary>What the maker has settled of it.</summary>
    public ProductFacts Facts { get; init; } = ProductFacts.None;

    /// <summary>Whether a person gave the kind of a label that was read, so that its own words did not settle it.</summary>
    public bool KindGiven { get; init; }

    /// <summary>How it is sold; null where a soap's label leaves it open.</summary>
    public SoldAs? SoldAs { get; init; }

    /// <summary>How it is sold where words are judged: an unlisted soap may have been meant for soap alone.</summary>
    public SoldAs? MeantAs { get; init; }

    /// <summary>The principal display panel, where it is known.</summary>
    public Panel? Panel { get; init; }

    /// <summary>Whether a person gave it.</summary>
    public bool PanelGiven { get; init; }

    /// <summary>Where findings about the whole label point.</summary>
    public string Where => Label.Text.Where;

    /// <summary>Where findings about the business point.</summary>
    public string BusinessWhere => Label.Own is null ? Where : "workshop.yaml";

    /// <summary>The ingredients named, each with what the dictionary knows it as.</summary>
    public IReadOnlyList<(string Name, Ingredient? Known)> Names => [.. Label.Names.Select(n => (n.Name, n.Known))];

    /// <summary>What was found, the gravest first.</summary>
    public IEnumerable<Finding> Found => found.Select(f => f with { Source = Market.Cite(f.Source) }).OrderBy(f => f.Severity);

    /// <summary>Says that a rule applies. Where the market has no such rule in force, or it does
    /// not bind this product, nothing is found.</summary>
    /// <param name="rule">
    /// The rule's id. Of a label that was read, a case <c>/label</c> of the rule goes first: the same rule in words, or of a
    /// weight, for labels made elsewhere.
    /// </param>
    /// <param name="where">Where it was found.</param>
    /// <param name="arguments">What fills the places of its sentences.</param>
    /// <returns>Whether it was told.</returns>
    public bool Tell(string rule, string where, params object[] arguments)
    {
        if (Binding(rule) is not { } binding)
            return false;
        found.Add(Find(binding, where, arguments));
        return true;
    }

    /// <summary>The same by a row of a table, which brings its own source.</summary>
    public void TellBy(Basis basis, string rule, string where, params object[] arguments)
    {
        if (Binding(rule) is { } binding)
            found.Add(Find(binding, where, arguments).By(basis));
    }

    /// <summary>The same label, nothing found yet, as another kind of product.</summary>
    /// <param name="kind">The kind; null where nothing tells.</param>
    /// <param name="label">What another part of it says; null for the same.</param>
    internal CheckCase As(ProductKind? kind, LabelStatement? label = null) =>
        new(label ?? Label, Rules)
        {
            Product = Product,
            Kind = kind,
            Facts = Facts,
            SoldAs = SoldAs,
            MeantAs = MeantAs,
            Panel = Panel,
            PanelGiven = PanelGiven,
        };

    /// <summary>Takes over what was found elsewhere, as in making the declaration.</summary>
    public void Take(IEnumerable<Finding> findings) => found.AddRange(findings);

    /// <summary>Takes over what was found of another case and not of this; whether there was any.</summary>
    public bool TakeNew(CheckCase other)
    {
        var more = other.found.ExceptBy(found.Select(f => (f.Rule, f.Message)), f => (f.Rule, f.Message)).ToArray();
        found.AddRange(more);
        return more.Length > 0;
    }

    /// <summary>The rule as it binds this product here and today; null where it does not, or
    /// where a fact takes the product out of it.</summary>
    public Rule? Binding(string id) =>
        ((Label.Own is null ? Rules.Rule(id + "/label") : null) ?? Rules.Rule(id)) is { } rule
        && rule.Binds(Kind?.Id, SoldAs == Recipes.SoldAs.Soap) && !rule.Unless.Any(e => e.Frees(IsSo(e.Fact)) == true) ? rule : null;

    /// <summary>Whether a fact is so: as the maker says, as the kind tells, or as the label's words show; null where none does.</summary>
    public bool? IsSo(ProductFact fact) =>
        Facts.State(fact.Id) ?? Known(fact.Id)
            ?? (Kind?.Groups.Contains(new(fact.Id, true)) == true || fact.Says?.IsMatch(Label.Text.Text) == true ? true : null);

    // A recipe says by its active ingredients whether it is a drug as well.
    private bool? Known(string fact) => fact == "drug-too" && Product is { } product ? !product.Batch.Recipe.Actives.IsEmpty : null;

    private Finding Find(Rule rule, string where, object[] arguments) =>
        rule.Find(where, [.. rule.Unless.Where(e => e.Frees(IsSo(e.Fact)) is null)], arguments);
}
