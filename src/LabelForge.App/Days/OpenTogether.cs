using System.Collections.Immutable;

namespace LabelForge.Days;

/// <summary>Many open things of one kind told as one line, which holds each of them.</summary>
public static class OpenTogether
{
    /// <summary>How many of a kind stand apart, at most: common practice.</summary>
    public const int MostApart = 3;

    /// <summary>Ten scents of one Saturday that wait for labels, as one.</summary>
    public static ImmutableArray<OpenThing> Labels(ImmutableArray<OpenThing> open) => Of(open, OpenKind.Labels, labels =>
        (new("labels-several", labels.Sum(l => l.Count ?? 0), labels.Select(l => l.Product).Distinct().Count()),
            new("labels-each", string.Join(", ", labels.Select(l => $"{l.Count} {l.Product}")))));

    /// <summary>Ten materials that run low, as one.</summary>
    public static ImmutableArray<OpenThing> Low(ImmutableArray<OpenThing> open) => Of(open, OpenKind.Stock, low =>
        (new("low-several", low.Length), new("labels-each", string.Join(", ", low.Select(l => l.Titled.Filled[0])))));

    private static ImmutableArray<OpenThing> Of(ImmutableArray<OpenThing> open, OpenKind kind, Func<OpenThing[], (Saying, Saying)> said)
    {
        var many = open.Where(o => o.Kind == kind).ToArray();
        if (many.Length <= MostApart)
            return open;
        var (title, detail) = said(many);
        var all = new OpenThing(kind, title, [detail]) { Each = [.. many] };
        return [.. open.Select(o => o == many[0] ? all : o).Except(many)];
    }
}
