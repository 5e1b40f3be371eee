using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Letters at twice their size, and a page no wider than 320 pixels: nothing is cut off and nothing has to be scrolled sideways for
/// (WCAG 2.2, success criteria 1.4.4 and 1.4.10). Tables and pictures that need two dimensions scroll by themselves.
/// </summary>
public sealed class LargeTextTests(Chromium chromium)
{
    // Words that a box cuts off: it hides what runs over, and something does. What is hidden from sight on purpose is left out.
    private const string CutOff = """
        () => [...document.querySelectorAll('main *, header *, footer *')].filter(e => {
          const style = getComputedStyle(e);
          if (e.closest('.unseen, svg, [hidden], dialog, textarea, pre, .scroll') || style.visibility === 'hidden' || e.getClientRects().length === 0) return false;
          if (style.clipPath !== 'none' || e.parentElement && getComputedStyle(e.parentElement).clipPath !== 'none') return false;
          const words = [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim());
          const cut = words && style.overflowX === 'hidden' && e.scrollWidth > e.clientWidth + 1 || words && style.overflowY === 'hidden' && e.scrollHeight > e.clientHeight + 1;
          const over = words && !e.closest('.tiles.scrolled') && e.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !e.closest('[tabindex="0"]');
          return cut || over;
        }).slice(0, 3).map(e => e.tagName + '.' + e.className + ' "' + e.textContent.trim().slice(0, 40) + '"')
        """;

    [Theory]
    [InlineData(1280, 200)]
    [InlineData(390, 200)]
    [InlineData(320, 100)]
    public async Task No_word_is_lost_and_no_page_scrolls_sideways(int width, int percent)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width);
        FilledBooks.Fill(window.Folder);
        var found = new List<string>();
        await window.Context
            .AddInitScriptAsync(
                $"document.addEventListener('DOMContentLoaded', () => document.documentElement.style.fontSize = '{percent}%')");
        foreach (var path in Routes.All)
        {
            await window.GoAsync(path);
            await window.SettleAsync();
            Assert.Equal($"{16 * percent / 100}px",
                await window.Page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).fontSize"));
            if (!await window.Page
                .EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"))
                found.Add($"{path} runs over the side: {await window.Page.EvaluateAsync<string>(Overflow.Cause)}");
            found.AddRange((await window.Page.EvaluateAsync<string[]>(CutOff)).Select(w => $"{path}: {w}"));
        }
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_recipes_fields_show_the_whole_of_what_is_in_them(int width)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width);
        foreach (var recipe in Directory.GetFiles(Path.Combine(window.Folder, "recipes")).Select(f => Path.GetFileNameWithoutExtension(f)))
        {
            await window.GoAsync($"/recipes/{recipe}");
            await window.SettleAsync();
            Assert.Equal("", await window.Page.EvaluateAsync<string>(Overflow.Cut));
        }
    }
}
