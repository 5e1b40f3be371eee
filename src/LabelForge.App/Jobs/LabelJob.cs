using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Declarations;
using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Looks;
using LabelForge.Quantities;

namespace LabelForge.Print.Jobs;

/// <summary>The one way through, from a recipe to a laid-out label: composition, declaration, content, layout.</summary>
public sealed record LabelJob
{
    /// <summary>The product: a recipe or a variant, as planned or as its lot was weighed.</summary>
    public required Product Product { get; init; }

    /// <summary>The workshop.</summary>
    public Workshop Workshop => Product.Workshop;

    /// <summary>The batch.</summary>
    public BatchFormula Batch => Product.Batch;

    /// <summary>The product's kind.</summary>
    public required ProductKind Kind { get; init; }

    /// <summary>The ingredient declaration.</summary>
    public required Declaration Declaration { get; init; }

    /// <summary>What the label says.</summary>
    public required LabelContent Content { get; init; }

    /// <summary>The label laid out, or why it does not fit.</summary>
    public required Fit Fit { get; init; }

    /// <summary>The day to judge by.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The labels that go on the same package, by their designs.</summary>
    public required ImmutableDictionary<string, Fit> Companions { get; init; }

    /// <summary>Whether it is known what package the label is for, from the recipe or from its
    /// design; else the label's front stands for the package's.</summary>
    public required bool IsPackageKnown { get; init; }

    /// <summary>Of a set: each product in it, and what of it is judged; empty for the label of one product.</summary>
    public ImmutableArray<(Product Product, RecipeFacts Facts)> InSet { get; init; } = [];

    /// <summary>Whether it is the label of several products in one package. It binds no lot to a product.</summary>
    public bool IsSet => !InSet.IsEmpty;

    // Neither substances nor colours are judged by the size of a front.
    private static readonly Length AnyFront = Length.FromMillimetres(50);

    /// <summary>Goes the whole way for a product.</summary>
    /// <param name="design">The design's id, or null for the usual one.</param>
    /// <param name="lot">The lot, or null where there is none yet.</param>
    /// <param name="on">The date to judge by.</param>
    /// <param name="names">In whose words the ingredients are named.</param>
    /// <exception cref="InputException">Something in the workshop, or the design's id, is wrong.</exception>
    public static LabelJob Prepare(Product product, Market market, string? design, LotCode? lot, DateOnly on,
        NameStyle names = NameStyle.Market)
    {
        var (workshop, recipe, batch, kind) = (product.Workshop, product.Recipe, product.Batch, product.Kind);
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, market, on, names);
        var asked = design ?? UsualDesign.For(kind.Id, workshop.Business.LabelStock, recipe.Package).Design;
        var drawn = new DesignShelf(workshop.Folder).Load(asked, recipe.Package);
        var panel = drawn.Panels.FirstOrDefault(p => p.Principal) ?? drawn.Panels[0];
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration,
            (recipe.Package ?? drawn.Package)?.PrincipalPanel(market.On(on)) ?? Panel.Rectangle(panel.Width, panel.Height), lot, on);
        content = WorkshopRange.WithWords(content, workshop, recipe);
        InkBlock? symbol = lot is { } known ? LotSymbol.Wished(workshop, recipe, known) : null;
        var extras = ExtrasOf.Design(drawn, workshop, batch, lot);
        var wanted = LookFor(asked, drawn, workshop, recipe);
        var range = wanted is { Range: var beside } ? RangeWords.Of(beside, workshop, recipe, content, names) : [];
        var look = wanted?.Look;
        drawn = look is null ? drawn : drawn.In(RangeFit.Over(drawn, look, range, symbol, extras));
        return new LabelJob
        {
            Product = product,
            Kind = kind,
            Declaration = declaration,
            Content = content,
            On = on,
            IsPackageKnown = (recipe.Package ?? drawn.Package) is not null,
            Fit = Alternatives.Name(LabelFitter.Fit(drawn, content, symbol, extras), drawn, recipe, content, symbol),
            Companions = drawn.With.ToImmutableDictionary(id => id, id =>
            {
                var companion = LabelDesign.Load(id, recipe.Package is { } p && LabelDesign.Load(id).Package?.Shape == p.Shape ? p : null);
                companion = look is null ? companion : companion.In(RangeFit.Over(companion, look, range, symbol));
                return LabelFitter.Fit(companion with { SaidElsewhere = Enum.GetValues<Role>().ToImmutableHashSet() }, content, symbol);
            }),
        };
    }

    // A style or a tone named with the design asks for its plain setting; a design that names no product has nothing to arrange.
    private static (Look Look, WorkshopRange Range)? LookFor(string asked, LabelDesign drawn, Workshop workshop, Recipe recipe)
    {
        var written = DesignLook.Of(asked);
        if (written.IsPlain || !drawn.TakesLook)
            return null;
        var range = WorkshopRange.Of(workshop, recipe);
        var look = range.LookOf(recipe);
        return (look with { Arrangement = written.Arrangement ?? look.Arrangement, Types = written.Style ?? look.Types }, range);
    }

    /// <summary>What the label does not carry, in sentences: elements that its design and the
    /// labels beside it have no place for, or no room.</summary>
    public ImmutableArray<string> LeftOut => Fit is Fit.Fits fits ? fits.Layout.LeftOut : [];

    /// <summary>Holds what would be printed against the rules; of a set each product, and what is said of all of them once.</summary>
    /// <exception cref="InputException">It cannot be judged.</exception>
    public CheckReport Check()
    {
        if (!IsSet)
            return RecipeCheck.Run(Facts);
        var each = InSet.Select(p => (p.Product, Report: RecipeCheck.Run(p.Facts))).ToArray();
        bool OfAll(Finding finding) => each.All(e => e.Report.Findings.Any(f => f.Rule == finding.Rule && f.Message == finding.Message));
        var common = each[0].Report.Findings.Where(OfAll).DistinctBy(f => (f.Rule, f.Message));
        return each[0].Report with
        {
            Findings = [
                .. common.Concat(each.SelectMany(e => e.Report.Findings.Where(f => !OfAll(f))
                    .Select(f => f with { Where = $"{e.Product.Name}: {f.Where}" }))).OrderBy(f => f.Severity)],
            Found = each[0].Report.Found with { Ingredients = Content.Ingredients },
        };
    }

    /// <summary>What a check of a product's substances and colours reads: the label's words, which are not laid out.</summary>
    /// <param name="on">The date to judge by.</param>
    /// <exception cref="InputException">Something in the workshop is wrong.</exception>
    public static RecipeFacts Unlaid(Product product, Market market, DateOnly on)
    {
        var (workshop, batch, kind) = (product.Workshop, product.Batch, product.Kind);
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, market, on);
        var panel = product.Recipe.Package?.PrincipalPanel(market.On(on)) ?? Panel.Rectangle(AnyFront, AnyFront);
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration, panel, null, on);
        return new RecipeFacts(workshop, batch, kind, declaration, content, []) { On = on, IsPackageKnown = false };
    }

    /// <summary>What a check of this label reads.</summary>
    public RecipeFacts Facts =>
        new(Workshop, Batch, Kind, Declaration, Content, Heights) { On = On, Printed = Printed, IsPackageKnown = IsPackageKnown };

    // What stands on the label or on one beside it. Where it does not fit, nothing is known of what would be printed.
    private ImmutableHashSet<LabelPart>? Printed => Fit is Fit.Fits
        ? [.. Companions.Values.Append(Fit).OfType<Fit.Fits>().SelectMany(f => f.Layout.Said).Select(PartOf).OfType<LabelPart>()]
        : null;

    private static LabelPart? PartOf(Role role) => role switch
    {
        Role.Name => LabelPart.Name,
        Role.Identity => LabelPart.Identity,
        Role.NetQuantity => LabelPart.NetQuantity,
        Role.Ingredients => LabelPart.Ingredients,
        Role.Directions => LabelPart.Directions,
        Role.Warnings => LabelPart.Warnings,
        Role.Responsible => LabelPart.Responsible,
        Role.Contact => LabelPart.Contact,
        // The lot stands under its barcode too.
        Role.Lot or Role.Barcode => LabelPart.Lot,
        Role.PeriodAfterOpening => LabelPart.PeriodAfterOpening,
        Role.BestBefore => LabelPart.BestBefore,
        Role.Origin => LabelPart.Origin,
        _ => null,
    };

    private ImmutableArray<PrintedHeight> Heights => Fit is Fit.Fits fits
        ? [.. fits.Layout.Texts
            .Select(t => (Text: t,
                Rule: t.Role switch
                {
                    Role.NetQuantity => "net-quantity.type-too-small",
                    Role.Ingredients => "ingredients.type-too-small",
                    _ => null,
                }))
            .Where(t => t.Rule is not null)
            .Select(t => new PrintedHeight(t.Rule!, Roles.NameOf(t.Text.Role), t.Text.LetterHeight.Millimetres,
                t.Text.RequiredFloor.Millimetres))]
        : [];
}
