namespace LabelForge.Cli.Verbs;

/// <summary>A verb as it is made: what a call takes is added where it is named, in the order in which help lists it.</summary>
internal sealed class Verb(string name, string description) : Command(name, description)
{
    /// <summary>Adds a word of the call, by its place.</summary>
    public Argument<T> Argument<T>(string name, string description, ArgumentArity? arity = null)
    {
        var argument = new Argument<T>(name) { Description = description };
        argument.Arity = arity ?? argument.Arity;
        Arguments.Add(argument);
        return argument;
    }

    /// <summary>Adds a word of the call that is usually the same.</summary>
    public Argument<T> Argument<T>(string name, string description, T usual)
    {
        var argument = new Argument<T>(name) { Description = description, DefaultValueFactory = _ => usual };
        Arguments.Add(argument);
        return argument;
    }

    /// <summary>Adds an option.</summary>
    public Option<T> Option<T>(string name, string description, bool required = false) =>
        Add(new Option<T>(name) { Description = description, Required = required });

    /// <summary>Adds an option that is usually the same.</summary>
    public Option<T> Option<T>(string name, string description, T usual) =>
        Add(new Option<T>(name) { Description = description, DefaultValueFactory = _ => usual });

    public Argument<string> Recipe(bool required = true)
    {
        var recipe = Shared.RecipeArgument(required);
        Arguments.Add(recipe);
        return recipe;
    }

    public Option<string?> Workshop() => Add(Shared.Workshop());

    public Option<string?> Market() => Add(Shared.Market());

    public Option<string> Format() => Add(Shared.Format());

    public Option<string?> Lot(bool required) => Add(Shared.Lot(required));

    public Option<string?> Design() => Add(Shared.Design());

    public Option<string> Names() => Add(Shared.Names());

    public Option<string?> On() => Add(Shared.On());

    public Option<string?> Variant() => Add(Shared.Variant());

    public Option<string?> Since() => Add(Shared.Since());

    /// <summary>Says what it does; it needs neither the books nor the page.</summary>
    public Command Runs(Func<ParseResult, int> run)
    {
        SetAction(r => Exit.Run(() => run(r)));
        return this;
    }

    private Option<T> Add<T>(Option<T> option)
    {
        Options.Add(option);
        return option;
    }
}
