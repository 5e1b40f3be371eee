namespace LabelForge.Checks.Subjects;

/// <summary>Whether the label carries a lot, and whether it is known what package it is for.</summary>
internal static class LotChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Label.Lot is null && !(label.Label.MayBeLot is { } code && label.Tell("lot.missing/unclear", code, code)))
            label.Tell("lot.missing", label.Label.Own is null ? label.Where : "label");
        if (label.Product is { IsPackageKnown: false } product)
            label.Tell("package.missing", label.Where, UsualPackage.For(product.Kind));
    }
}
