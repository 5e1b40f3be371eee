using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether these rules are for the product at all, and whether a given kind hides what the label says it is.</summary>
internal static class ProductChecks
{
    /// <summary>Tells that the label is for something that the rules are not for. True where
    /// nothing else is to be judged by them.</summary>
    public static bool IsOther(CheckCase label)
    {
        var business = label.Label.Own is { } own ? own.Name : label.Label.Business.Name;
        if (OtherProductReader.Read(label.Label.Rest, business, label.Market) is not { } other)
            return false;
        var rest = label.KindGiven ? $"it was judged as {label.Kind!.Id} all the same, as you said" : "nothing else of it was judged";
        return label.Tell("product.other", label.Where, other.Written, other.Product.What, rest, other.Product.WhoseIn(label.Market)!)
            && !label.KindGiven;
    }

    /// <summary>Of a label judged as another kind than it says: what its own kind calls for all the same.</summary>
    public static void Differs(CheckCase label)
    {
        if (!label.KindGiven || label.Label.Identity is not { } says || says.Kind.Id == label.Kind!.Id)
            return;
        var own = label.As(label.Facts.Of(says.Kind, label.Label.Text.Text));
        WarningChecks.Check(own);
        if (label.TakeNew(own))
            label.Tell("product.differs", label.Where, says.Written, says.Kind.Name.ToLowerInvariant(),
                label.Kind.Name.ToLowerInvariant());
    }
}
