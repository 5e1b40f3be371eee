using LabelForge.Checks.Reading;
using LabelForge.UseCases;

namespace LabelForge.Web.Workbench;

/// <summary>Labels made elsewhere, as they were given to the page, and how they are to be judged.</summary>
/// <param name="Words">The words of one, where they were typed or pasted.</param>
/// <param name="Files">The files, which go before the words; empty where none was given.</param>
/// <param name="Question">How it is to be judged.</param>
internal sealed record GivenLabel(string Words, ImmutableArray<GivenFile> Files, LabelQuestion Question)
{
    /// <summary>The market that such a label is held to where none is chosen: the workshop's own, as its maker's labels are.</summary>
    /// <param name="workshop">The workshop; null where there is none yet.</param>
    public static Market OwnMarket(Workshop? workshop) => workshop?.Market ?? Shipped.Markets.Usual;

    /// <summary>The market that it is judged by.</summary>
    /// <param name="workshop">The workshop; null where there is none yet.</param>
    /// <param name="chosen">The id that was chosen; empty for none.</param>
    public static Market MarketOf(Workshop? workshop, string chosen) =>
        OwnMarket(workshop) is var own && chosen.Length == 0 ? own : own.Book.Find(chosen).OrRefuse();

    /// <summary>What was read and found of each, in the order of the files; nothing where nothing was given yet.</summary>
    public ImmutableArray<JudgedProduct> Judged() => CheckLabel.All(
        Files.IsEmpty
            ? Words.Trim().Length == 0 ? [] : [("", () => LabelText.Of(Words, "the text"))]
            : Files.Select(f => (f.Name, (Func<LabelText>)f.Read)), Question, Shipped.Dictionary);
}
