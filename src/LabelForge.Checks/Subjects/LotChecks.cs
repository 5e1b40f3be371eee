namespace LabelForge.Checks.Subjects;

/// <summary>Whether the label carries a lot, whether its number is its own, and whether it is known what package it is for.</summary>
internal static class LotChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Label.Lot is null && !(label.Label.MayBeLot is { } code && label.Tell("lot.missing/unclear", code, code)))
            label.Tell("lot.missing", label.Label.Own is null ? label.Where : "label");
        if (label.Product is { IsPackageKnown: false } product)
            label.Tell(product.IsOfSet ? "package.missing/set" : "package.missing", label.Where,
                product.IsOfSet ? UsualPackage.ForASet : UsualPackage.For(product.Kind));
        if (label.Product is { } made && SharedItems.Of(made.Workshop, made.Batch.Recipe) is { Length: > 0 } others)
            label.Tell("gtin.shared", made.Batch.Recipe.File, made.Batch.Recipe.Item!, string.Join(", ", others));
    }
}
