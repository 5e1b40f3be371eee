using LabelForge.Print.Drawing;

namespace LabelForge.Print.Documents;

/// <summary>A value on a paper: as it is printed, and as data.</summary>
/// <param name="Text">As it is printed.</param>
/// <param name="Data">As data gives it: a text, a number, a day; null where the text itself is the data.</param>
public sealed record PaperValue(string Text, object? Data = null)
{
    /// <summary>Nothing, where a cell has nothing to say.</summary>
    public static PaperValue None { get; } = new("");
}

/// <summary>A line of a paper: what it is, and its value or what is missing.</summary>
/// <param name="Key">Its name in data.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Value">The value; null where it is missing.</param>
/// <param name="Source">Where the value comes from; null where the section says it.</param>
/// <param name="Missing">What to add and where, where the value is missing; else null.</param>
public sealed record PaperFact(string Key, string What, PaperValue? Value, string? Source = null, string? Missing = null)
{
    /// <summary>Whether it is a question with room for an answer, to somebody else, rather than a lack of the paper's own.</summary>
    public bool IsQuestion { get; init; }

    /// <summary>A question with room for an answer.</summary>
    public static PaperFact Question(string key, string question) => new(key, question, null, null, "") { IsQuestion = true };

    /// <summary>A fact that is there.</summary>
    public static PaperFact Of(string key, string what, string text, string? source = null, object? data = null) =>
        new(key, what, new PaperValue(text, data), source);

    /// <summary>A fact that is there, or what to write where it is not.</summary>
    public static PaperFact OrMissing(string key, string what, string? text, string missing, string? source = null) =>
        string.IsNullOrWhiteSpace(text) ? Lacking(key, what, missing) : Of(key, what, text, source);

    /// <summary>A fact that is missing.</summary>
    public static PaperFact Lacking(string key, string what, string missing) => new(key, what, null, null, missing);
}

/// <summary>A column of a table.</summary>
/// <param name="Key">Its name in data.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Width">Its part of the width, against that of the others.</param>
/// <param name="IsFigure">Whether it holds figures, set to the right.</param>
public sealed record PaperColumn(string Key, string Heading, double Width, bool IsFigure = false);

/// <summary>A table on a paper.</summary>
/// <param name="Columns">The columns.</param>
/// <param name="Rows">The rows, a value for each column.</param>
public sealed record PaperTable(ImmutableArray<PaperColumn> Columns, ImmutableArray<ImmutableArray<PaperValue>> Rows);

/// <summary>A part of a paper under a heading.</summary>
/// <param name="Key">Its name in data.</param>
/// <param name="Title">The heading.</param>
/// <param name="Source">The paragraph that asks for it; null for none.</param>
public sealed record PaperSection(string Key, string Title, string? Source)
{
    /// <summary>Its lines.</summary>
    public ImmutableArray<PaperFact> Facts { get; init; } = [];

    /// <summary>Its table; null for none.</summary>
    public PaperTable? Table { get; init; }

    /// <summary>Sentences below.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Labels that are drawn here at their size, or smaller where the page is narrower.</summary>
    public ImmutableArray<LabelLayout> Labels { get; init; } = [];

    /// <summary>Blank lines to write on, after the facts.</summary>
    public int Blanks { get; init; }
}

/// <summary>A paper that goes with a product: the same as a PDF and as data.</summary>
/// <param name="Kind">Its kind, as <c>product-file</c>.</param>
/// <param name="Title">Its title.</param>
/// <param name="Subtitle">What it is of: product, business, market, day.</param>
/// <param name="Source">What asks for it.</param>
public sealed record Paper(string Kind, string Title, string Subtitle, string Source)
{
    /// <summary>Its parts.</summary>
    public ImmutableArray<PaperSection> Sections { get; init; } = [];

    /// <summary>Sentences on its first page.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>What stands at the foot of each page, before the page's number.</summary>
    public string Foot { get; init; } = "";

    /// <summary>The page's width; US Letter by default.</summary>
    public Length PageWidth { get; init; } = Length.FromInches(8.5m);

    /// <summary>The page's height; US Letter by default.</summary>
    public Length PageHeight { get; init; } = Length.FromInches(11m);

    /// <summary>What is missing, with the part that it is missing in.</summary>
    public IEnumerable<(PaperSection Section, PaperFact Fact)> Missing =>
        Sections.SelectMany(s => s.Facts.Where(f => f.Missing is not null && !f.IsQuestion).Select(f => (s, f)));
}
