using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Starts;
using LabelForge.Web.Editing;
using LabelForge.Web.Serving;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Parts;

/// <summary>The start of a workshop. What is answered is kept as it is typed, and written into files once it is enough.</summary>
public partial class Start
{
    private const string Page = "start";
    private static readonly NameMatcher Names = new(Shipped.Dictionary);

    private readonly HashSet<string> _left = [];
    private readonly Dictionary<string, string> _typed = [];
    private StartAnswers _answers = new();
    private StartPicture? _picture;
    private string? _pictureWrong;
    private string? _shown;
    private string? _wrong;
    private bool _asked;
    private (string Of, string Said) _wrapper = ("", "");
    private LatestOnlyWorker<StartAnswers, StartPicture>? _drawing;

    /// <summary>The made-up workshop.</summary>
    [Inject]
    public required SampleWorkshop Sample { get; init; }

    private Place? Place => EnvelopeAddress.Read(_answers.Address);

    private ImmutableArray<ScentLine> Scents => ScentLine.Read(_answers.Scents);

    private ImmutableArray<(string Key, string Name)> Asked => WorkshopStart.Asked(_answers);

    private string? ContactWrong =>
        _left.Contains("contact") && _answers.Contact.Trim().Length > 0 && ContactWay.Parse(_answers.Contact) is { IsValue: false } wrong
            ? PageWords.Told(wrong.Problem, Say.Language)
            : null;

    private bool PiecesWrong =>
        _answers.Pieces.Trim().Length > 0 && !int.TryParse(_answers.Pieces.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out _);

    /// <summary>The first thing that is still to be answered, by its field's id; null where all is.</summary>
    private string? Missing => NoShop ? "shop" : NoBase ? "base" : AmountOpen is { } key ? $"amount-{key}" : NoPieces ? "pieces" : null;

    private bool NoShop => string.IsNullOrWhiteSpace(_answers.Shop);

    private bool NoBase =>
        !_answers.Goods.Any(g => UsualGood.Named(g)?.Material.Kind == MaterialKind.Base) && _answers.Wrapper.Trim().Length == 0;

    private string? AmountOpen => Asked.FirstOrDefault(a => string.IsNullOrWhiteSpace(_answers.Amounts.GetValueOrDefault(a.Key))
        || Wrong(_answers.Amounts[a.Key]) is not null).Key;

    private bool NoPieces => _answers.Pieces.Trim().Length == 0 || PiecesWrong;

    private string WrapperRead
    {
        get
        {
            if (_wrapper.Of != _answers.Wrapper)
            {
                try
                {
                    var read = Names.Match(SuppliedText.Read(_answers.Wrapper, Names.Knows));
                    _wrapper = (_answers.Wrapper, Say["start.own-base-read", read.Length, read.Count(r => r.Found is null)]);
                }
                catch (InputException e)
                {
                    _wrapper = (_answers.Wrapper, PageWords.Told(e.Problem, Say.Language));
                }
            }
            return _wrapper.Said;
        }
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        _answers = Kept.Of<StartAnswers>(Page);
        _drawing = new((answers, stop) => Pictures.Of(answers, new(Say["start.order-waits"], Say["start.weight-waits"]), stop), Ready,
            DispatchExceptionAsync, Stopping);
        Draw();
    }

    /// <inheritdoc/>
    public void Dispose() => _drawing?.Dispose();

    private Task Ready(StartPicture picture) => InvokeAsync(() =>
    {
        _pictureWrong = picture.Problem is { } problem ? PageWords.Told(problem, Say.Language) : null;
        // The last good picture stays, and says that it is older.
        if (picture.Problem is null || _picture is null)
            _picture = picture;
        StateHasChanged();
    });

    private void Change(Func<StartAnswers, StartAnswers> change)
    {
        _answers = change(_answers);
        _wrong = null;
        Kept.Keep(Page, _answers);
        Draw();
    }

    private void Draw()
    {
        if (Missing is not ("shop" or "base"))
            _drawing?.Want(_answers);
    }

    private void Leave(string field) => _left.Add(field);

    private void Amount(string key, string typed)
    {
        var strict = Loose.Amount(typed);
        if (strict == typed)
            _typed.Remove(key);
        else
            _typed[key] = typed;
        Change(a => a with { Amounts = strict.Trim().Length == 0 ? a.Amounts.Remove(key) : a.Amounts.SetItem(key, strict) });
    }

    private void Net(string typed)
    {
        var strict = Loose.Amount(typed);
        if (strict == typed)
            _typed.Remove("net");
        else
            _typed["net"] = typed;
        Change(a => a with { Net = strict });
    }

    private string AmountHint(string key, string typed)
    {
        var strict = Loose.Amount(typed);
        if (typed.Trim().Length == 0)
            return Say["start.for-instance",
                key == WorkshopStart.Fragrance
                    ? "1.5 % of batch"
                    : key == WorkshopStart.Colour
                    ? "0.6 g"
                    : IsBase(key)
                    ? "1.5 lb"
                    : "1 tsp"];
        if (Measures.Amount.Parse(strict) is not { IsValue: true, Value: var amount })
            return "";
        return amount.IsMass
            ? Say["start.understood", Words.Grams(amount.AsMass().Grams)]
            : strict == typed
            ? ""
            : Say["start.understood", strict];
    }

    private string? AmountWrong(string key, string typed) => _left.Contains($"amount-{key}") && typed.Trim().Length > 0
        ? OfWhat(key, typed).Length > 0 ? Say["start.of-what", Loose.Money(typed.Trim())] : Wrong(Loose.Amount(typed)) : null;

    private string? Wrong(string amount) =>
        amount.Trim().Length == 0 || Measures.Amount.Parse(amount) is not { IsValue: false } wrong
            ? null
            : PageWords.Told(wrong.Problem, Say.Language);

    // A number that does not say of what: the answers, as buttons; a base is no part of a batch, it is most of it.
    private static string[] OfWhat(string key, string amount)
    {
        var text = amount.Trim();
        var figure = Loose.Money(text.TrimEnd('%', ' '));
        if (!decimal.TryParse(figure, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _))
            return [];
        return text.EndsWith('%') ? [$"{figure} % of batch"]
            : IsBase(key) ? [$"{figure} lb", $"{figure} oz", $"{figure} kg", $"{figure} g"]
            : [$"{figure} % of batch", $"{figure} g", $"{figure} oz", $"{figure} tsp"];
    }

    private static bool IsBase(string key) =>
        UsualGood.Named(key)?.Material.Kind is MaterialKind.Base || key == WorkshopStart.OwnBase;

    // The questions that are still to be answered before a sheet can be printed.
    private int[] Open => [.. new[] { NoShop, NoBase, AmountOpen is not null || NoBase, NoPieces }.Select((open, at) => (open, at + 1))
        .Where(o => o.open).Select(o => o.Item2)];

    private RenderFragment Toggle(UsualGood good) => builder =>
    {
        var chosen = _answers.Goods.Contains(good.Id);
        builder.OpenElement(0, "button");
        builder.AddAttribute(1, "type", "button");
        builder.AddAttribute(2, "id", $"good-{good.Id}");
        builder.AddAttribute(3, "aria-pressed", chosen ? "true" : "false");
        builder.AddAttribute(4, "onclick",
            EventCallback.Factory
                .Create<MouseEventArgs>(this,
                    () => Change(a => a with { Goods = chosen ? a.Goods.Remove(good.Id) : a.Goods.Add(good.Id) })));
        builder.AddContent(5, good.Material.Name);
        builder.CloseElement();
    };

    private async Task Finish()
    {
        _asked = true;
        if (Missing is { } missing)
        {
            _left.Add(missing);
            var first = missing == "base" ? $"good-{UsualGood.OfKind(MaterialKind.Base).First().Id}" : missing;
            await Script.InvokeVoidAsync("labelforge.focus", first);
            return;
        }
        if (Write(() => WorkshopStart.Files(_answers, Shipped.Dictionary, Shipped.Markets)))
            Here.NavigateTo($"/print/{WorkshopStart.Products(_answers).Recipe}");
    }

    private async Task ShopOnly()
    {
        _asked = true;
        if (Missing == "shop" || ContactWrong is not null)
        {
            await Script.InvokeVoidAsync("labelforge.focus", Missing == "shop" ? "shop" : "contact");
            return;
        }
        if (Write(() => [.. _answers.Goods.Select(UsualGood.Named).OfType<UsualGood>()
            .Select(g => new StartFile(OpenDocuments.Materials, g.Id, g.Text)), WorkshopStart.Business(_answers, Shipped.Markets)]))
            Here.NavigateTo("/");
    }

    // A file that is there already is the maker's own and stays.
    private bool Write(Func<ImmutableArray<StartFile>> files)
    {
        try
        {
            foreach (var file in files().Where(f => !OpenDocuments.Has(f.Room, f.Id)))
                OpenDocuments.Create(file.Room, file.Id, file.Text);
            Kept.Keep(Page, new StartAnswers());
            return true;
        }
        catch (InputException e)
        {
            _wrong = PageWords.Told(e.Problem, Say.Language);
            return false;
        }
    }

    private async Task OpenSample()
    {
        await Script.InvokeVoidAsync("labelforge.open", (await Sample.OpenAsync()).ToString());
    }

    // 96 pixels of a page's own measure are an inch (CSS Values and Units, 5.2).
    private static string Pixels(decimal millimetres) =>
        Math.Round(Length.FromMillimetres(millimetres).Inches * 96, 1).ToString(CultureInfo.InvariantCulture);
}
