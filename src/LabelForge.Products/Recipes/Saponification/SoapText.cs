using LabelForge.Ingredients;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes.Saponification;

/// <summary>Reads what materials and recipes say of soap made from oils.</summary>
internal static class SoapText
{
    private const string Unit = "mg KOH/g";

    /// <summary>A material's <c>saponification: 190 mg KOH/g</c>, a range, or 0 for what takes up
    /// no alkali; null where not written.</summary>
    /// <exception cref="InputException">It is none, or has another unit.</exception>
    public static SaponificationValue? ReadSaponification(TextNode? node)
    {
        if (node is null)
            return null;
        if (!node.Text.EndsWith(Unit, StringComparison.OrdinalIgnoreCase))
            throw node.Refuse("soap.saponification-unit", ("text", node.Text));
        var figure = node.Text[..^Unit.Length].Trim();
        if (figure == "0")
            return new SaponificationValue(0, 0);
        var parsed = SaponificationValue.Parse(figure.Replace('–', '-'));
        // The lightest fatty acid that makers use, caprylic, takes up 389; citric acid 876 (both from their molar masses).
        return parsed is { IsValue: true, Value.High: <= 1000 }
            ? parsed.Value
            : throw node.Refuse("soap.not-a-saponification-value", ("text", node.Text));
    }

    /// <summary>A lye's <c>purity: 99 %</c>; null where not written.</summary>
    /// <exception cref="InputException">It is not one share above 0, or the material is no lye.</exception>
    public static Share? ReadPurity(TextNode? node, MaterialKind kind)
    {
        if (node is null)
            return null;
        if (kind != MaterialKind.Lye)
            throw node.Refuse("soap.purity-of-a-lye");
        return OneShare(node) is { Fraction: > 0 } share
            ? share
            : throw node.Refuse("soap.not-a-purity", ("text", node.Text));
    }

    /// <summary>A recipe's <c>superfat: 5 %</c>; null where not written.</summary>
    /// <exception cref="InputException">It is not one share below 100 %.</exception>
    public static WrittenSuperfat? ReadSuperfat(TextNode? node)
    {
        if (node is null)
            return null;
        return OneShare(node) is { Fraction: < 1 } share
            ? new WrittenSuperfat(share, node.Line)
            : throw node.Refuse("soap.not-a-superfat", ("text", node.Text));
    }

    /// <summary>A recipe's <c>declare as: charged</c> or <c>formed</c>; charged where not written.</summary>
    /// <exception cref="InputException">It is neither.</exception>
    public static DeclareAs ReadDeclareAs(TextNode? node) => node?.Text switch
    {
        null or "charged" => DeclareAs.Charged,
        "formed" => DeclareAs.Formed,
        var other => throw node!.Refuse("soap.declared-as", ("other", other)),
    };

    private static Share? OneShare(TextNode node) =>
        ShareText.Parse(node.Text) is { IsValue: true, Value.IsExact: true } parsed ? parsed.Value.Low : null;
}
