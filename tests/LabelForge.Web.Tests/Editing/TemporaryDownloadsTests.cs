using System.Text;
using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>What is kept for a while, and what makes room.</summary>
public class TemporaryDownloadsTests
{
    [Fact]
    public void A_picture_that_is_shown_again_makes_no_room_for_newer_ones()
    {
        var kept = new TemporaryDownloads();
        var shown = Picture(kept, 0);
        var never = Picture(kept, -1);
        // As on a page whose typing comes back to what it was, between four hundred others.
        for (var i = 1; i <= 600; i++)
        {
            Picture(kept, i);
            if (i % 100 == 0)
                Assert.Equal(shown, Picture(kept, 0));
        }
        Assert.True(kept.Has(shown));
        Assert.False(kept.Has(never));
    }

    private static string Picture(TemporaryDownloads kept, int number) =>
        kept.Put(Encoding.UTF8.GetBytes($"<svg>{number}</svg>"), "image/svg+xml", "label.svg");
}
