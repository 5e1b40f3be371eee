namespace LabelForge.Recipes;

/// <summary>The package that a kind of product usually comes in: what to write where a recipe does not say. Common practice.</summary>
/// <remarks>A proposal to measure against, never a figure that anything is judged by.</remarks>
public static class UsualPackage
{
    /// <summary>The package of a set as its file writes it.</summary>
    public const string ForASet = "{ shape: box, size: 8x3x2 in }";

    /// <summary>The package as a recipe's file writes it: <c>{ shape: bar, size: 3.25x2.25x1 in }</c>.</summary>
    /// <param name="kind">The kind of product.</param>
    public static string For(ProductKind kind) => kind.Id switch
    {
        "soap-bar" or "shampoo-bar" or "conditioner-bar" or "shaving-soap" or "bubble-bar" or "solid-lotion-bar" =>
            "{ shape: bar, size: 3.25x2.25x1 in }",
        "lip-balm" or "tinted-lip-balm" or "lipstick" or "mascara" => "{ shape: tube, size: 16.5x52 mm }",
        "deodorant" => "{ shape: tube, size: 1.5x4 in }",
        "bath-salt" or "bath-bomb" => "{ shape: bag, size: 4x6 in }",
        "solid-perfume" or "beard-balm" or "blusher" or "eye-shadow" or "face-powder" => "{ shape: tin, size: 1.5x0.5 in }",
        "beard-oil" or "face-oil" or "perfume-oil" => "{ shape: bottle, size: 1.25x3 in }",
        _ => kind.QuantityBy == QuantityBy.Volume ? "{ shape: bottle, size: 2x6 in }" : "{ shape: jar, size: 3x2 in }",
    };
}
