namespace LabelForge.Ingredients.Supplied;

/// <summary>Puts the figures of a safety data sheet beside the names of the wrapper's list, and holds the one against the other.</summary>
public static class PaperMerge
{
    /// <summary>The wrapper's names, each with what both papers say of it; what only the sheet
    /// names, or where the two clash, is told.</summary>
    /// <param name="list">The wrapper's names, matched.</param>
    /// <param name="sheet">The sheet's rows, matched.</param>
    /// <returns>The names, and sentences for the maker to read.</returns>
    public static (ImmutableArray<NameMatch> Matches,
        ImmutableArray<string> Told) Of(ImmutableArray<NameMatch> list, ImmutableArray<NameMatch> sheet)
    {
        var merged = list.ToBuilder();
        var told = ImmutableArray.CreateBuilder<string>();
        foreach (var row in sheet)
        {
            var at = IndexOf(list, row);
            if (at < 0)
            {
                told.Add(
                    $"The safety data sheet names {row.Written.Text}{Cas(row)}{Said(row.Written.Share)}; the list does not. Ask the "
                        + $"supplier which is right.");
                continue;
            }
            if (row.Written.Share == ShareRange.Unknown)
                continue;
            var (one, other) = (merged[at].Written.Share, row.Written.Share);
            if (Both(one, other) is not { } both)
            {
                told.Add(
                    $"{merged[at].Written.Text}: the list says {ShareOf(one)}, the safety data sheet {ShareOf(other)}. Both cannot be; "
                        + $"the list's figure was kept. Ask the supplier.");
                continue;
            }
            merged[at] = merged[at] with
            {
                Written = merged[at].Written with
                {
                    Share = both,
                    Remarks = merged[at].Written.Remarks.Add($"safety data sheet: {ShareOf(other)}"),
                },
            };
        }
        return (merged.ToImmutable(), told.ToImmutable());
    }

    private static int IndexOf(ImmutableArray<NameMatch> list, NameMatch row)
    {
        for (var at = 0; at < list.Length; at++)
        {
            if (list[at].Written.MayContain)
                continue;
            var same = list[at].Found is { } found
                && ((row.Found is not null && found.Key == row.Found.Key) || (row.Written.Cas is { } cas && found.Cas.Contains(cas)));
            if (same
                || (row.Written.Cas is { } number && list[at].Written.Cas?.Equals(number) == true)
                || NameIdentity.Same.Equals(list[at].Written.Text, row.Written.Text))
                return at;
        }
        return -1;
    }

    private static ShareRange? Both(ShareRange one, ShareRange other)
    {
        var low = one.Low.Fraction > other.Low.Fraction ? one.Low : other.Low;
        var high = one.High.Fraction < other.High.Fraction ? one.High : other.High;
        return low.Fraction <= high.Fraction ? new ShareRange(low, high) : null;
    }

    private static string Cas(NameMatch row) => row.Written.Cas is { } cas ? $" (CAS {cas})" : "";

    private static string Said(ShareRange share) => share == ShareRange.Unknown ? "" : $" at {ShareOf(share)}";

    private static string ShareOf(ShareRange share) =>
        share.IsExact ? $"{share.Low.Percent:0.####} %" : $"{share.Low.Percent:0.####}-{share.High.Percent:0.####} %";
}
