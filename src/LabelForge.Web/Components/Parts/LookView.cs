using System.Collections.Concurrent;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Web.Editing;
using LabelForge.Web.Wording;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page on which looks are tried on a product: the label first, then the pictures to choose from, drawn behind it.</summary>
public abstract partial class LookView : RecipeView
{
    private const int MostOfRange = 24;
    private const double DotsOfRange = 250;

    private readonly List<EditedFile> _undo = [];
    private string _variant = "";
    private LookSubject? _subject;
    private LatestOnlyWorker<(LookSubject Subject, LookTry Try), LookDraft>? _drafts;
    private LatestOnlyWorker<(LookSubject Subject, LookTry Try), int>? _tiles;
    private LookTry? _tilesOf;

    /// <summary>Draws looks.</summary>
    [Inject]
    public required LookPictures Pictures { get; init; }

    /// <summary>Draws ornaments.</summary>
    [Inject]
    public required OrnamentTiles Ornaments { get; init; }

    /// <summary>The page's words.</summary>
    [Inject]
    public required Say Words { get; init; }

    /// <summary>The look that is tried; null until the label that stands was drawn.</summary>
    protected LookTry? Tried { get; private set; }

    /// <summary>The label in it.</summary>
    protected LookDraft? Draft { get; private set; }

    /// <summary>Whether a newer one is being drawn.</summary>
    protected bool IsDrawing => Draft?.Of != Tried;

    /// <summary>Pictures to choose from, by what they show; null for what this label has no room for.</summary>
    protected ConcurrentDictionary<string, string?> Tiles { get; } = [];

    /// <summary>The products of the workshop in this arrangement, frame and types.</summary>
    protected IReadOnlyList<(string Name, string Address)> Range { get; private set; } = [];

    /// <summary>The seed of a look by chance.</summary>
    protected string Seed { get; private set; } = "";

    /// <summary>What was done last.</summary>
    protected string Told { get; private set; } = "";

    /// <summary>Whether measures are drawn over the label.</summary>
    protected bool Measures { get; set; } = true;

    /// <summary>Whether the whole label is shown, and not its front.</summary>
    protected bool Whole { get; set; }

    /// <summary>The recipe's scents.</summary>
    protected string[] Variants { get; private set; } = [];

    /// <summary>The hue that small pictures are drawn in.</summary>
    protected double TileHue { get; private set; }

    /// <summary>How many products the workshop has.</summary>
    protected int Products => WorkshopCache.Read().Workshop is { } workshop ? ProductChoices.Of(OpenDocuments, workshop).Count() : 0;

    /// <summary>Whether the look is another than the label has.</summary>
    protected bool IsChanged => Tried is not null && _subject is not null && Tried != _subject.Before;

    /// <summary>Whether what was used last can be taken back.</summary>
    protected bool CanUndo => _undo.Count > 0 || _moves.Count > 0;

    /// <summary>The product's name.</summary>
    protected string ShownName => Variant ?? Get("name");

    /// <inheritdoc/>
    protected override string? Variant => _variant.Length > 0 ? _variant : Variants.FirstOrDefault();

    /// <summary>The scent that a link names.</summary>
    [SupplyParameterFromQuery(Name = "product")]
    public string? AskedVariant { get; set; }

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        _drafts ??= new((w, stop) => Pictures.Of(w.Subject, w.Try, stop), Drawn, DispatchExceptionAsync, Stopping);
        _tiles ??= new((w, stop) => DrawTiles(w.Subject, w.Try, stop), _ => InvokeAsync(StateHasChanged), DispatchExceptionAsync,
            Stopping);
        if (_variant.Length == 0)
            _variant = AskedVariant ?? "";
        base.OnParametersSet();
        Variants = ProductChoices.Variants(Text);
    }

    /// <inheritdoc/>
    protected override LabelWish Wish => base.Wish with { Design = Choice.Design?.Split('+')[0] };

    /// <inheritdoc/>
    protected override void Made()
    {
        if (View.IsOld || View.Job?.Fit is not Fit.Fits { Layout.Design.Look: { } look })
            return;
        var before = LookTry.Of(look);
        int? at = Variants.Length == 0 ? null : Math.Max(0, Array.IndexOf(Variants, Variant));
        var kept = IsChanged;
        _subject = new(Id, Text, at, Wish, before, Words.Language);
        if (!kept || Tried is null)
            Tried = before;
        TileHue = Tried.Hue;
        Draw();
    }

    /// <summary>Tries a look.</summary>
    protected void Try(LookTry look)
    {
        Tried = look;
        Told = "";
        Draw();
    }

    /// <summary>Tries a change of the look as it stands when the change arrives, which may be before the last one was shown.</summary>
    protected void Try(Func<LookTry, LookTry> change)
    {
        if (Tried is { } tried)
            Try(change(tried));
    }

    /// <summary>Goes back to the look that the label has.</summary>
    protected void Back()
    {
        if (_subject is { } subject)
            Try(subject.Before);
    }

    /// <summary>A look by chance, with a seed of its own.</summary>
    protected void Surprise() => TrySeed((Random.Shared.Next(1, 10_000)).ToString(CultureInfo.InvariantCulture));

    /// <summary>The look of a seed.</summary>
    protected void TrySeed(string seed)
    {
        Seed = seed.Trim();
        if (Seed.Length > 0)
            Try(LookTry.Surprise(Seed));
    }

    /// <summary>Another drawing of the same ornament.</summary>
    protected void Redraw()
    {
        if (Tried is { } tried)
            Try(tried with
            {
                Seed = (PlainFigure.Whole(tried.Seed) is { } n ? n + 1 : 2)
                .ToString(CultureInfo.InvariantCulture)
            });
    }

    /// <summary>Shows another scent.</summary>
    protected void ChooseVariant(string variant)
    {
        (_variant, Tried, Draft, _subject, _tilesOf) = (variant, null, null, null, null);
        Remake();
    }

    /// <summary>Writes the look into this product.</summary>
    protected void UseHere()
    {
        if (Tried is not { } wanted || Settled(wanted) is not { } tried || _subject is not { } subject || File is not { } file)
            return;
        Write([(file, text => tried.Into(text, subject.Variant, subject.Before))], Words["look.used-here", ShownName]);
    }

    /// <summary>Writes what a range shares into the workshop, and the rest into this product.</summary>
    protected void UseForAll()
    {
        if (Tried is not { } tried
            || _subject is not { } subject
            || OpenDocuments.Open(OpenDocuments.Top, OpenDocuments.Business) is not { } business)
            return;
        var own = tried with { Arrangement = subject.Before.Arrangement, Frame = subject.Before.Frame, Types = subject.Before.Types };
        var changes = new List<(EditedFile, Func<string, string>)> { (business, tried.IntoWorkshop) };
        foreach (var id in OpenDocuments.Ids(OpenDocuments.Recipes))
        {
            if (OpenDocuments.Open(OpenDocuments.Recipes, id) is { } file)
                changes.Add((file,
                    text => id == Id ? own.Into(LookTry.OutOf(text), subject.Variant, subject.Before) : LookTry.OutOf(text)));
        }
        Write(changes, Words["look.used-all", Products]);
    }

    /// <summary>A picture to choose from, drawn when it is first shown.</summary>
    protected string TileOf(string key, Func<string> draw) => Tiles.GetOrAdd($"{key}-{(int)TileHue / 15}", _ => draw())!;

    /// <summary>Sizes what is dragged: a drag as long as a hand is wide takes all of its range.</summary>
    protected void Drag((string What, double Down) drag) =>
        Try(t => drag.What == "name"
            ? t.WithName(t.NameSize - drag.Down / DotsOfRange * 0.5)
            : t.WithOrnament(t.OrnamentSize + drag.Down / DotsOfRange * 1.5));

    /// <summary>A part as a percentage.</summary>
    protected static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{part * 100:0} %");

    /// <summary>What a hue is called.</summary>
    protected string HueName(double hue) =>
        Words["look-hue." + (hue switch
        {
            < 15 or >= 345 => "rose",
            < 45 => "red",
            < 80 => "orange",
            < 120 => "yellow",
            < 170 => "green",
            < 220 => "teal",
            < 280 => "blue",
            _ => "violet",
        })];

    /// <summary>The number that a slider gives.</summary>
    protected static double Number(ChangeEventArgs e, double before) =>
        double.TryParse(e.Value?.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : before;

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        _drafts?.Dispose();
        _tiles?.Dispose();
        base.Dispose(disposing);
    }

    private void Write(IEnumerable<(EditedFile File, Func<string, string> Change)> changes, string told)
    {
        _undo.Clear();
        _moves.Clear();
        try
        {
            foreach (var (file, change) in changes)
            {
                var before = file.Text;
                file.Apply(change);
                if (file.Text != before)
                    _undo.Add(file);
            }
            // What was chosen beside the recipe would stand over what is written in it.
            if (Choice.Design?.Contains('+') == true)
                Choose(Choice with { Design = Choice.Design.Split('+')[0] });
            Told = told;
            Tried = null;
            Remake();
        }
        catch (InputException e)
        {
            Undo();
            Told = PageWords.Told(e.Problem, Words.Language);
        }
    }

    private void Draw()
    {
        if (_subject is { } subject && Tried is { } tried)
            _drafts?.Want((subject, tried));
    }

    // The label that was asked for first; then, with time left, the pictures to choose from.
    private Task Drawn(LookDraft draft) => InvokeAsync(() =>
    {
        Draft = draft;
        if (_subject is { } subject && draft.Of == Tried && _tilesOf != draft.Of)
            _tiles?.Want((subject, draft.Of));
        StateHasChanged();
    });

    private int DrawTiles(LookSubject subject, LookTry tried, CancellationToken stop)
    {
        // A slider that is being drawn moves on before this.
        if (stop.WaitHandle.WaitOne(250))
            return 0;
        foreach (var id in ArrangementFile.Known)
            Tile("a-" + id, tried with { Arrangement = id });
        foreach (var id in DesignStyle.Known)
            Tile("t-" + id, tried with { Types = id });
        _tilesOf = tried;
        var range = new List<(string, string)>();
        foreach (var one in Pictures.Range(OpenDocuments, tried, MostOfRange, stop))
            range.Add(one);
        Range = range;
        return range.Count;

        void Tile(string key, LookTry look)
        {
            Tiles[key] = Pictures.FrontOf(subject, look, stop);
            if (!stop.IsCancellationRequested)
                InvokeAsync(StateHasChanged);
        }
    }
}
