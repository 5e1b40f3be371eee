using LabelForge.Declarations;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Fitting;

/// <summary>Which panels of a design a look arranges, and the faces that they are.</summary>
internal static class FrontPanels
{
    private static readonly HashSet<Role> OnFronts = [Role.Business, Role.Name, Role.Identity, Role.NetQuantity, Role.Rule];

    /// <summary>Whether a panel is a front: it names the product, and says nothing that an arrangement has no place for.</summary>
    public static bool IsFront(DesignPanel panel) =>
        !panel.Turned && panel.Elements.Any(e => e.Role == Role.Name) && panel.Elements.All(e => OnFronts.Contains(e.Role));

    /// <summary>Arranges a front; null where its words have no room in the look's arrangement.</summary>
    public static ArrangedFront? Arrange(LabelDesign design, DesignPanel panel, Look look, LabelContent content, PrintRules rules, ArtBlock? logo, ArtBlock? photo = null)
    {
        var style = DesignStyle.Load(look.Types);
        var (left, top, width, height) = design.Round
            ? (0, 0, Points.Of(design.Width), Points.Of(design.Height))
            : (Points.Of(panel.X), Points.Of(panel.Y), Points.Of(panel.Width), Points.Of(panel.Height));
        var face = new FrontFace(left, top, width, height, design.Round, look, style, rules.ClearAbove, (double)(rules.ClearBeside?.Figure ?? 1m))
        {
            Photo = photo,
            BeginsAtCut = left < 0.5,
            EndsAtCut = left + width > Points.Of(design.Width) - 0.5,
        };
        if (ArrangementFile.For(look.Arrangement, width, height, design.Round, style, look.LongName) is not { } root)
            return null;
        var said = panel.Elements.Select(e => e.Role).ToHashSet();
        return FrontArranger.Arrange(face, root, e => said.Contains(e.Role) || e.Role is Role.ScentLine or Role.Words or Role.Claim or Role.Price ? ElementText.From(e, content, design.Id) : null, logo);
    }
}
