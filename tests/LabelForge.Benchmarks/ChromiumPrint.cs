using System.Globalization;
using System.Text;
using LabelForge.Benchmarks.Floor;

namespace LabelForge.Benchmarks;

/// <summary>The same labels as a page of HTML that a browser prints: lines of text at their places, the barcode as a drawing.</summary>
internal static class ChromiumPrint
{
    private const string Browser = "/usr/bin/chromium";

    /// <summary>Its version, as it tells it.</summary>
    public static string Version()
    {
        using var process = System.Diagnostics.Process
            .Start(new System.Diagnostics.ProcessStartInfo(Browser, "--version") { RedirectStandardOutput = true })!;
        return process.StandardOutput.ReadToEnd().Trim().Split(" built")[0];
    }

    /// <summary>Prints so many sheets.</summary>
    public static ChildRun Print(Ink ink, int sheets, string to)
    {
        var page = Scratch.Path("sheets.html");
        File.WriteAllText(page, Html(ink, sheets));
        return ChildRun.Of(Browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run",
            $"--user-data-dir={Scratch.Path("chromium")}", "--no-pdf-header-footer", $"--print-to-pdf={to}", $"file://{page}");
    }

    private static string Html(Ink ink, int sheets)
    {
        var html = new StringBuilder("<!doctype html><meta charset=utf-8><style>");
        html.Append(CultureInfo.InvariantCulture,
            $"@page{{size:{ink.PageWidth}pt {ink.PageHeight}pt;margin:0}}body{{margin:0}}.s{{position:relative;width:{ink.PageWidth}pt;height:{ink.PageHeight}pt;break-after:page;overflow:hidden}}.l,.l *{{position:absolute}}.l span{{white-space:pre;line-height:0}}");
        foreach (var (font, i) in ink.Fonts.Select((f, i) => (f, i)))
            html.Append(CultureInfo.InvariantCulture, $"@font-face{{font-family:f{i};src:url('file://{font}')}}");
        html.Append("</style>");
        var label = Label(ink);
        for (var sheet = 0; sheet < sheets; sheet++)
        {
            html.Append("<div class=s>");
            foreach (var (x, y) in ink.Corners)
                html.Append(CultureInfo.InvariantCulture, $"<div class=l style='left:{x}pt;top:{y}pt'>{label}</div>");
            html.Append("</div>");
        }
        return html.ToString();
    }

    private static string Label(Ink ink)
    {
        var html = new StringBuilder();
        foreach (var l in ink.Lines)
            html.Append(CultureInfo.InvariantCulture,
                $"<span style='left:{l.X}pt;top:{l.Y - l.Size * 0.35f}pt;font:{l.Size}pt f{l.Font};line-height:0'>{l.Text}</span>");
        html.Append(CultureInfo.InvariantCulture,
            $"<svg width='{ink.Width}pt' height='{ink.Height}pt' viewBox='0 0 {ink.Width} {ink.Height}'><path d='");
        foreach (var b in ink.Bars)
            html.Append(CultureInfo.InvariantCulture, $"M{b.X} {b.Y}h{b.Width}v{b.Height}h{-b.Width}z");
        return html.Append("'/></svg>").ToString();
    }
}
