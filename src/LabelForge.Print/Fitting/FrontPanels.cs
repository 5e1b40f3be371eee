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
    private static readonly HashSet<Role> OnFronts = [Role.Business, Role.Name, Role.Identity, Role.NetQuantity, Role.Rule, Role.ScentLine,
        Role.Price];

    /// <summary>Whether a panel is a front: it names the product, and says nothing that an arrangement has no place for.</summary>
    public static bool IsFront(DesignPanel panel) =>
        !panel.Turned && panel.Elements.Any(e => e.Role == Role.Name) && panel.Elements.All(e => OnFronts.Contains(e.Role));

    /// <summary>Arranges a front; null where its words have no room in the look's arrangement.</summary>
    public static ArrangedFront? Arrange(LabelDesign design, DesignPanel panel, Look look, LabelContent content, PrintRules rules,
        ArtBlock? logo, ArtBlock? photo = null)
    {
        var style = DesignStyle.Load(look.Types);
        var (left, top, width, height) = design.Round
            ? (0, 0, Points.Of(design.Width), Points.Of(design.Height))
            : (Points.Of(panel.X), Points.Of(panel.Y), Points.Of(panel.Width), Points.Of(panel.Height));
        var face = new FrontFace(left, top, width, height, design.Round, look, style, rules.ClearAbove,
            (double)(rules.ClearBeside?.Figure ?? 1m))
        {
            Photo = photo,
            BeginsAtCut = left < 0.5,
            FollowsOrnament = look.Ornament is not null && design.Panels.Any(p => p.Fill == PanelFill.Ornament
                && Math.Abs(Points.Of(p.X) + Points.Of(p.Width) - left) < 0.5),
            EndsAtCut = left + width > Points.Of(design.Width) - 0.5,
        };
        if (ArrangementFile.For(look.Arrangement, width, height, design.Round, style, look.LongName) is not { } root)
            return null;
        var said = panel.Elements.Select(e => e.Role).ToHashSet();
        // What a set holds takes more lines than what a bar does, and a price on a sign is read from afar: a design that says so keeps it.
        DesignElement Own(DesignElement element) => panel.Elements.FirstOrDefault(e => e.Role == element.Role) is not { } own ? element
            : element.Role == Role.NetQuantity && own.Lines > element.Lines ? element with { Lines = own.Lines }
            : element.Role is Role.Price or Role.ScentLine ? element with { Least = own.Least, Most = own.Most } : element;
        var front = FrontArranger.Arrange(face, root,
            e => said.Contains(e.Role) || e.Role is Role.ScentLine or Role.Words or Role.Claim or Role.Price
                ? ElementText.From(Own(e), content, design.Id)
                : null, logo);
        return front is null ? null : MovedWords.Of(face, front);
    }
}
