namespace LabelForge.Starts;

/// <summary>What a maker answers to four questions: who makes it, what was bought, what is poured, how many come out of it.</summary>
public sealed record StartAnswers
{
    /// <summary>The trading name.</summary>
    public string Shop { get; init; } = "";

    /// <summary>The address as on an envelope.</summary>
    public string Address { get; init; } = "";

    /// <summary>A telephone number, a web address or an e-mail address.</summary>
    public string Contact { get; init; } = "";

    /// <summary>The usual goods chosen, by their ids.</summary>
    public ImmutableArray<string> Goods { get; init; } = [];

    /// <summary>The words of a base's wrapper, where none of the usual ones is it.</summary>
    public string Wrapper { get; init; } = "";

    /// <summary>The scents, a line each.</summary>
    public string Scents { get; init; } = "";

    /// <summary>How much goes in of each, as files write it: by the id of a good, <see cref="WorkshopStart.OwnBase"/>,
    /// <see cref="WorkshopStart.Fragrance"/> or <see cref="WorkshopStart.Colour"/>.</summary>
    public ImmutableDictionary<string, string> Amounts { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>How many pieces a batch makes.</summary>
    public string Pieces { get; init; } = "";

    /// <summary>What one holds at least: <c>4 oz</c>.</summary>
    public string Net { get; init; } = "";
}
