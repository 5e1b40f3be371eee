using LabelForge.Print.Lettering;
using LabelForge.Quantities;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Where in its panel an element stands.</summary>
public enum Place
{
    /// <summary>Down from the top edge.</summary>
    Top,

    /// <summary>Centred in what the top and the bottom leave.</summary>
    Middle,

    /// <summary>Up from the bottom edge.</summary>
    Bottom,
}

/// <summary>How lines stand between the panel's sides.</summary>
public enum Align
{
    /// <summary>Flush left.</summary>
    Left,

    /// <summary>Centred.</summary>
    Centre,
}

/// <summary>One element of a panel.</summary>
public sealed record DesignElement
{
    /// <summary>What it says.</summary>
    public required Role Role { get; init; }

    /// <summary>Where in the panel.</summary>
    public Place Place { get; init; }

    /// <summary>How lines stand.</summary>
    public Align Align { get; init; }

    /// <summary>The face.</summary>
    public required TypeFace Face { get; init; }

    /// <summary>The least letter height the design gives it; the law's floor counts where it is higher.</summary>
    public Length Least { get; init; }

    /// <summary>The letter height it is never enlarged beyond, save where the law's floor is higher.</summary>
    public Length Most { get; init; }

    /// <summary>The most lines; 0 for any number.</summary>
    public int Lines { get; init; }

    /// <summary>Whether it is set in capitals.</summary>
    public bool Capitals { get; init; }

    /// <summary>Space after each letter, in em.</summary>
    public double Tracking { get; init; }

    /// <summary>From baseline to baseline, in em.</summary>
    public double Leading { get; init; }

    /// <summary>The space between this and the element before it.</summary>
    public Length Gap { get; init; }

    /// <summary>Whether it may be left out, and reported so, where it does not fit.</summary>
    public bool Optional { get; init; }

    /// <summary>Words that stand before the text, such as <c>Lot</c>; empty for none.</summary>
    public string Before { get; init; } = "";

    /// <summary>Whether a barcode's own text stands under it; the lot's line says it again where it does not.</summary>
    public bool Caption { get; init; } = true;

    /// <summary>The file of the maker's art, beside the design's own file; empty for none.</summary>
    public string File { get; init; } = "";

    /// <summary>The length of a rule; no length for the panel's whole width.</summary>
    public Length RuleLength { get; init; }

    /// <summary>The thickness of a rule.</summary>
    public Length RuleThickness { get; init; }
}

/// <summary>A part of the label that is laid out by itself.</summary>
/// <param name="Id">Its name, for messages.</param>
/// <param name="Principal">Whether it is the principal display panel (21 CFR 701.10).</param>
/// <param name="X">Its left edge, from the label's.</param>
/// <param name="Y">Its top edge, from the label's.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Padding">Kept clear inside every edge.</param>
/// <param name="Elements">What stands in it, each place from top to bottom.</param>
/// <param name="Turned">Whether it stands upside down on the flat label, as the back of one folded over an edge.</param>
public sealed record DesignPanel(
    string Id, bool Principal, Length X, Length Y, Length Width, Length Height, Length Padding, ImmutableArray<DesignElement> Elements,
    bool Turned = false)
{
    /// <summary>What a look fills it with.</summary>
    public PanelFill Fill { get; init; }

    /// <summary>Its area.</summary>
    public Area Area => Area.OfRectangle(Width, Height);
}

/// <summary>What a look fills a panel with that is no front; the plain setting leaves it white.</summary>
public enum PanelFill
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The ornament on its plate; nothing stands in it.</summary>
    Ornament,

    /// <summary>A plate, the words reversed out of it and symbols below it; the ornament where there are no words.</summary>
    Plate,
}

/// <summary>A label's design: its size and its panels.</summary>
/// <param name="Id">The file's name without its ending.</param>
/// <param name="Name">What to call it.</param>
/// <param name="Width">The label's width.</param>
/// <param name="Height">The label's height.</param>
/// <param name="Round">Whether the label is a circle (an ellipse) and not a rectangle.</param>
/// <param name="Panels">The panels.</param>
public sealed record LabelDesign(string Id, string Name, Length Width, Length Height, bool Round, ImmutableArray<DesignPanel> Panels)
{
    /// <summary>The package it is made for; null where it is for none of known size.</summary>
    public Package? Package { get; init; }

    /// <summary>What it is for, in plain words; may be empty.</summary>
    public string For { get; init; } = "";

    /// <summary>The ground.</summary>
    public Colour Ground { get; init; } = Colour.White;

    /// <summary>The ink of letters and rules. Barcodes are black on white in any case.</summary>
    public Colour Ink { get; init; }

    /// <summary>How far a coloured ground reaches beyond the cut.</summary>
    public Length Bleed { get; init; }

    /// <summary>The ids of the designs that go on the same package.</summary>
    public ImmutableArray<string> With { get; init; } = [];

    /// <summary>What those designs say, so that this one need not.</summary>
    public IReadOnlySet<Role> SaidElsewhere { get; init; } = ImmutableHashSet<Role>.Empty;

    /// <summary>How it looks; null for the plain, centred setting of its own elements.</summary>
    public Look? Look { get; init; }

    /// <summary>Whether the ground is printed and not the paper.</summary>
    public bool HasGround => Ground != Colour.White && !GroundIsStock;

    /// <summary>Whether the ground is the stock's own colour, which nothing prints.</summary>
    public bool GroundIsStock { get; init; }

    /// <summary>
    /// Whether a look does anything for it: it has a front to arrange, or goes with one. A carton's label is printed in black on a
    /// thermal roll and takes none.
    /// </summary>
    public bool TakesLook => !Panels.SelectMany(p => p.Elements).Any(e => e.Role is Role.Count or Role.Art or Role.LotBarcode);

    /// <summary>The stock's own colour.</summary>
    public Colour Stock { get; init; } = Colour.White;

    /// <summary>A colour as it is seen on the stock: through transparent inks the stock shows.</summary>
    public Colour Seen(Colour ink) => Look?.Palette.Seen(ink) ?? ink;

    /// <summary>The same design with a look: its colours, and its arrangement on the fronts.</summary>
    public LabelDesign In(Look look) =>
        this with { Look = look, Ground = look.Palette.Paper, GroundIsStock = true, Ink = look.Palette.Ink, Stock = look.Palette.Stock };

    // What ships does not change: a design for a package is read once.
    private static readonly FoundBefore<(string, string?), LabelDesign> Loaded = new(500);

    /// <summary>The ids of the designs that ship with the tool.</summary>
    public static IReadOnlyList<string> Known => Templates.Ids("designs");

    /// <summary>A design that ships with the tool.</summary>
    /// <param name="id">Its id; a style and a tone may follow: <c>bar-2x4+bookish+dark</c>.</param>
    /// <param name="package">The package it is to fit; null for the one that the design is drawn for.</param>
    /// <exception cref="InputException">There is none of that id, or it is for a package of another shape.</exception>
    public static LabelDesign Load(string id, Package? package = null)
    {
        var look = DesignLook.Of(id);
        return Known.Contains(look.Design)
            ? Loaded.Of((id, package?.Key), () => DesignFile.Read(Tree(look.Design), look, package))
            : throw Templates.Unknown("design", look.Design, Known);
    }

    /// <summary>A design of the maker's own.</summary>
    /// <exception cref="InputException">The file cannot be read, or says something that cannot be
    /// used; the message names the line.</exception>
    public static LabelDesign LoadFile(string path, string shownAs, Package? package = null, string? look = null) =>
        DesignFile.Read(YamlFile.Read(path, shownAs), DesignLook.Of(look ?? Path.GetFileNameWithoutExtension(path)), package);

    internal static MapNode Tree(string id) => Templates.Tree($"designs/{id}.yaml");
}
