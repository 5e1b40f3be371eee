using LabelForge.Print.Output;
using LabelForge.Starts;

namespace LabelForge.Web.Workbench;

/// <summary>What is shown of a start: the labels as far as the answers go, or why there are none.</summary>
/// <param name="Of">The answers.</param>
/// <param name="Labels">Each product with its picture.</param>
/// <param name="Problem">Why nothing could be drawn; null where it was.</param>
public sealed record StartPicture(StartAnswers Of, ImmutableArray<(string Name, LabelPicture Picture)> Labels, Problem? Problem);

/// <summary>Draws the labels of a start. Never throws on what a person wrote.</summary>
public sealed class StartPictures(TemporaryDownloads papers, ServeOptions options)
{
    /// <summary>The pictures for some answers.</summary>
    public StartPicture Of(StartAnswers answers, StartPreview.Waiting waiting, CancellationToken stop)
    {
        try
        {
            return new(answers, [.. StartPreview.Of(answers, waiting, Shipped.Dictionary, Shipped.Markets, options.Today(),
                stop).Select(Draw)], null);
        }
        catch (InputException e)
        {
            return new(answers, [], e.Problem);
        }
    }

    private (string, LabelPicture) Draw(PreviewLabel label)
    {
        using var svg = new MemoryStream();
        LabelFile.WriteSvg(svg, label.Layout.OnStock(), label.Layout.Design.Id);
        var design = label.Layout.Design;
        return (label.Name,
            new LabelPicture(papers.Put(svg.ToArray(), "image/svg+xml", "label.svg"), design.Id, design.Width.Millimetres,
                design.Height.Millimetres));
    }
}
