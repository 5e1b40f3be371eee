using System.Text.RegularExpressions;
using LabelForge.Web.Serving;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Every page of the site, once: the example's own ids stand for any.</summary>
internal static partial class Routes
{
    private static readonly Dictionary<string, string[]> Examples = new()
    {
        ["/materials/{Id}"] = ["/materials/bramble-fragrance", "/materials/clear-glycerin-base", "/materials/sodium-hydroxide"],
        ["/recipes/{Id}"] = ["/recipes/harbour-wall-bar"],
        ["/recipes/{Id}/versions"] = ["/recipes/bramble-bar/versions"],
        ["/materials/{Id}/versions"] = ["/materials/clear-glycerin-base/versions"],
        ["/labels/{Id}"] = ["/labels/bramble-bar"],
        ["/looks/{Id}"] = ["/looks/meadow-bar"],
        ["/print/{Id}"] = ["/print/sugar-scrub"],
        ["/stock/books/{List}"] = ["/stock/books/sale"],
        ["/trace/{From}"] = ["/trace/M1", $"/trace/{FilledBooks.Lot}"],
        ["/batches/{Lot}"] = [$"/batches/{FilledBooks.Lot}", $"/batches/{FilledBooks.OpenLot}"],
    };

    /// <summary>The addresses, as the pages themselves declare them; a page with a part to fill in needs an example above.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. typeof(PageServer).Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>())
            .Select(r => r.Template).Distinct().Order(StringComparer.Ordinal)
            .SelectMany(template => Examples.TryGetValue(template, out var some) ? some : [Fixed(template)]),
    ];

    private static string Fixed(string template) =>
        Part().IsMatch(template) ? throw new InvalidOperationException($"Routes.cs has no example of {template}.") : template;

    [GeneratedRegex("[{}]")]
    private static partial Regex Part();
}
