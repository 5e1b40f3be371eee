namespace LabelForge.Web.Tests.Browsing;

/// <summary>What makes a page run over its side, and what is cut in a field.</summary>
internal static class Overflow
{
    /// <summary>
    /// A function for the browser. What is over the side is not always what is wide: it is the innermost
    /// element that cures it where it is hidden.
    /// </summary>
    public const string Cause = """
        () => {
          const root = document.documentElement;
          const over = () => root.scrollWidth > root.clientWidth;
          let node = document.body, path = root.scrollWidth + ' > ' + root.clientWidth + ':';
          for (let next = node; next;) {
            node = next; next = null;
            for (const child of node.children) {
              const was = child.style.display;
              child.style.setProperty('display', 'none', 'important');
              const cured = !over();
              child.style.display = was;
              if (cured) { next = child; break; }
            }
          }
          return path + ' ' + node.outerHTML.slice(0, 200);
        }
        """;

    /// <summary>A function for the browser: the fields that do not show the whole of what is in them, each with its words.</summary>
    public const string Cut = """
        () => {
          const pen = document.createElement('canvas').getContext('2d');
          return [...document.querySelectorAll('main input[type=text], main select')].filter(e => e.offsetParent).map(e => {
            const style = getComputedStyle(e), text = e.tagName === 'SELECT' ? e.selectedOptions[0]?.textContent.trim() ?? '' : e.value;
            pen.font = [style.fontStyle, style.fontWeight, style.fontSize, style.fontFamily].join(' ');
            const arrow = e.tagName === 'SELECT' && style.appearance !== 'none' ? 20 : 0;
            const room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - arrow;
            return pen.measureText(text).width > room + 1 ? `${e.id} cuts "${text}"` : '';
          }).filter(w => w).join('; ');
        }
        """;
}
