using LabelForge.Files;

namespace LabelForge.Cli.Verbs;

/// <summary>The file that a verb writes, and <c>--force</c>: the place is looked at before anything else is done.</summary>
internal sealed class OutputOption
{
    private readonly Option<string?> _path;
    private readonly Option<bool> _force = new("--force")
    {
        Description = "Write over a file of another kind, or among the workshop's own files",
    };
    private readonly ImmutableArray<FileKind> _kinds;

    /// <param name="what">What is written, as help says it.</param>
    /// <param name="kinds">The kinds that can be written.</param>
    public OutputOption(string what, params ImmutableArray<FileKind> kinds) : this(what, required: true, kinds)
    {
    }

    private OutputOption(string what, bool required, ImmutableArray<FileKind> kinds, string name = "--out")
    {
        _path = new Option<string?>(name) { Description = what, Required = required };
        _kinds = kinds;
    }

    /// <summary>The kinds of a drawing.</summary>
    public static ImmutableArray<FileKind> Drawn { get; } = [FileKind.Pdf, FileKind.Svg, FileKind.Png];

    /// <summary>An output that need not be.</summary>
    public static OutputOption Optional(string what, params ImmutableArray<FileKind> kinds) => new(what, required: false, kinds);

    /// <summary>An output that need not be, under an option of another name.</summary>
    public static OutputOption Named(string name, string what, params ImmutableArray<FileKind> kinds) =>
        new(what, required: false, kinds, name);

    public OutputOption AddTo(Command verb)
    {
        verb.Options.Add(_path);
        verb.Options.Add(_force);
        return this;
    }

    /// <summary>Whether one may write over what is there.</summary>
    public bool Force(ParseResult r) => r.GetValue(_force);

    /// <summary>What was written on the call, not looked at.</summary>
    public string? Written(ParseResult r) => r.GetValue(_path);

    /// <summary>Where to write; the place is free.</summary>
    public string Path(ParseResult r) => PathOrNone(r)!;

    /// <summary>Where to write, or nothing; the place is free.</summary>
    public string? PathOrNone(ParseResult r)
    {
        if (r.GetValue(_path) is { } path)
            OutputPath.RefuseUnlessFree(path, _kinds, r.GetValue(_force));
        return r.GetValue(_path);
    }
}
