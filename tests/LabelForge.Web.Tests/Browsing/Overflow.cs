namespace LabelForge.Web.Tests.Browsing;

/// <summary>What makes a page run over its side.</summary>
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
}
