namespace LabelForge.Cli.Verbs;

/// <summary>The verbs of the books and the scale, in the order of a maker's day.</summary>
internal static class RecordVerbs
{
    public static IEnumerable<Command> All() =>
    [
        TodayVerb.Build(), PrintVerb.Build(), MarketVerbs.Build(), TableVerb.Build(), NextVerb.Build(), YearVerb.Build(),
        RecipeVerbs.Build(), WeighVerb.Build(), DryVerb.Build(), ReceiveVerb.Build(), OutgoingVerbs.Sell(), OutgoingVerbs.Complaint(),
        PapersVerb.Build(), AttachVerb.Build(), TagsVerb.Build(), OutgoingVerbs.Dispose(), ShelfVerbs.Return(), ShelfVerbs.Count(),
        OutgoingVerbs.Correct(), BooksVerbs.StockInHand(), BooksVerbs.Books(), TraceVerb.Build(), MoneyVerbs.Cost(), MoneyVerbs.Buy(),
        CopyVerbs.ReceiveList(), BooksVerbs.Import(), CopyVerbs.Backup(), CopyVerbs.Restore(), CopyVerbs.AgreeServer(),
    ];
}
