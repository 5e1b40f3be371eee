namespace LabelForge.Fuzz.Targets;

/// <summary>What is fuzzed, by name: a folder of <c>corpus</c> each.</summary>
public static class AllTargets
{
    private static readonly Dictionary<string, (Action<byte[]> Run, IReadOnlyList<string> Words)> Known = new()
    {
        ["amounts"] = (AmountTarget.Run, AmountTarget.Words),
        ["declarations"] = (DeclarationTarget.Run, DeclarationTarget.Words),
        ["workshop"] = (WorkshopTarget.Run, WorkshopTarget.Words),
        ["labels"] = (LabelTarget.Run, LabelTarget.Words),
        ["pdf"] = (PdfTarget.Run, PdfTarget.Words),
        ["lots"] = (LotTarget.Run, LotTarget.Words),
        ["csv"] = (CsvTarget.Run, CsvTarget.Words),
    };

    /// <summary>A target.</summary>
    public static Action<byte[]> Of(string name) => Known[name].Run;

    /// <summary>Words that its readers look for.</summary>
    public static IReadOnlyList<string> WordsOf(string name) => Known[name].Words;

    /// <summary>Fails where something that always holds does not.</summary>
    internal static void Holds(bool that, string what)
    {
        if (!that)
            throw new InvalidOperationException($"Does not hold: {what}");
    }
}
