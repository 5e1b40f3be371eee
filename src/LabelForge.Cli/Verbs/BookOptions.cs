using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>What the verbs that write in the books take alike: the workshop, the date, the person, a note.</summary>
internal sealed class BookOptions
{
    private readonly Option<string?> _workshop = Shared.Workshop();
    private readonly Option<string?> _on = new("--on") { Description = "The date it happened, YYYY-MM-DD (default: today)" };
    private readonly Option<string?> _by = new("--by") { Description = "Who did it (default: the user of this machine)" };
    private readonly Option<string?> _note = new("--note") { Description = "A note, or where a paper or photo lies" };
    private readonly Option<string> _format = Shared.Format();
    private readonly Option<bool> _sure = new("--sure") { Description = "What looks like a slip is meant so" };

    /// <summary>Adds what a verb takes that writes an entry.</summary>
    public BookOptions AddTo(Command verb) => Add(verb, _workshop, _on, _by, _note, _format);

    /// <summary>Adds what a verb takes that reads a file into the books: each line has a note of its own, or none.</summary>
    public BookOptions AddFileTo(Command verb) => Add(verb, _workshop, _on, _by, _format);

    /// <summary>Adds what a verb takes that only reads: where, and as what; and the day to reckon
    /// from where it reckons from one.</summary>
    public BookOptions AddReadingTo(Command verb, bool dated)
    {
        if (!dated)
            return Add(verb, _workshop, _format);
        _on.Description = "The day to reckon from, YYYY-MM-DD (default: today)";
        return Add(verb, _workshop, _on, _format);
    }

    /// <summary>Adds the options of a verb that asks where an entry looks like a slip.</summary>
    public BookOptions AddAskingTo(Command verb) => AddSureTo(verb).AddTo(verb);

    /// <summary>Adds the option that answers such questions.</summary>
    public BookOptions AddSureTo(Command verb) => Add(verb, _sure);

    private BookOptions Add(Command verb, params ReadOnlySpan<Option> options)
    {
        foreach (var option in options)
            verb.Options.Add(option);
        return this;
    }

    /// <summary>Asks what looks like a slip, before anything is written: of the person at the
    /// screen, else by a refusal that says how to answer.</summary>
    /// <exception cref="InputException">It is not meant so, or nobody is there to say.</exception>
    public void Ask(ParseResult r, IReadOnlyList<Problem> questions)
    {
        if (questions.Count == 0 || r.GetValue(_sure))
            return;
        if (!Console.IsInputRedirected && !Console.IsErrorRedirected)
        {
            Console.Error.Write($"{string.Join(' ', questions.Select(q => q.Wrong))} Write it so? (y/N) ");
            if (Console.ReadLine()?.Trim() is "y" or "Y" or "yes")
                return;
            throw new InputException("call.nothing-written");
        }
        throw new InputException("call.slip",
            ("inner", questions.Aggregate((first, then) => new Problem("slip.several", ("first", first), ("then", then)))));
    }

    /// <summary>The day it is written down.</summary>
    public static DateOnly Today => Shared.Date(null);

    public string Folder(ParseResult r) => r.GetValue(_workshop) ?? Directory.GetCurrentDirectory();

    public Workshop Workshop(ParseResult r) => Shared.OpenFolder(Folder(r));

    public DateOnly On(ParseResult r) => Shared.Date(r.GetValue(_on));

    public string By(ParseResult r) => r.GetValue(_by) ?? Environment.UserName;

    public string? Note(ParseResult r) => r.GetValue(_note);

    public bool Json(ParseResult r) => r.GetValue(_format) == "json";

    /// <summary>Says what was done: as data where JSON is wanted, else in words.</summary>
    public int Told(ParseResult r, JsonObject data, params ReadOnlySpan<string> lines)
    {
        Shared.Say(r, _format, () => data, lines);
        return Exit.Done;
    }

    public static OpenBooks Book(Workshop workshop) => OpenBooks.Open(workshop.Folder);

    /// <summary>Asks the books of a workshop; null is handed in where it has none yet.</summary>
    public static T AskIfAny<T>(Workshop workshop, Func<IBooks?, T> ask) =>
        OpenBooks.Exists(workshop.Folder) ? Book(workshop).Ask(ask) : ask(null);

    /// <summary>A sum of money: a plain figure with at most two decimals.</summary>
    public static decimal Money(string text, string option) =>
        MoneyText.Parse(text) is { IsValue: true, Value: var money } ? money
            : throw new InputException("call.not-a-sum-money", ("text", text), ("option", option));

    /// <summary>A material lot of the shop as people write it: M3.</summary>
    public static int MaterialLot(string text) =>
        text.Length > 1
            && text[0] is 'M' or 'm'
            && PlainFigure.Whole(text[1..]) is { } id
            ? id
            : throw new InputException("call.not-a-material-lot", ("text", text));

    /// <summary>A finished lot's code, as the books hold it.</summary>
    public static string Lot(string text) => Shared.Need(Lots.LotCode.Parse(text)).ToString();
}
