using LabelForge.Composition;
using LabelForge.Declarations;

namespace LabelForge.Cli.Explain;

/// <summary>A declaration with all that its order rests on.</summary>
/// <param name="Declaration">What stands on the label.</param>
/// <param name="Proof">What is proved of the order.</param>
/// <param name="Accounts">Where each ingredient comes from, by its name.</param>
internal sealed record Explanation(Declaration Declaration, CompositionProof Proof,
    ImmutableDictionary<string, IngredientAccount> Accounts)
{
    public static Explanation Of(Declaration declaration, BatchComposition composition) =>
        new(declaration, composition.Proof, composition.Accounts);

    /// <summary>Writes it for a person, as wide as the page.</summary>
    public void Write(TextWriter to, int width)
    {
        foreach (var line in Lines(width))
            to.WriteLine(line);
    }

    private IEnumerable<string> Lines(int width) =>
    [
        .. Page.Wrap(Declaration.Statement, width),
        "",
        .. ChartLines.Of(this, width),
        "",
        .. OrderLines.Of(this, width),
        "",
        .. AskLines.Of(this, width),
        "",
        .. SourceLines.Of(this, width),
    ];
}
