using System.Diagnostics;
using System.Globalization;
using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// From an empty folder to printed sheets of three scents, counted: clicks, fields, characters and seconds. Counted before the
/// start asked four things: business 1 click and 6 fields, ten materials 40 and 49, three recipes 18 and 33, three sheets 9 and 3.
/// </summary>
public sealed class TaskCountTests(Chromium chromium)
{
    [Fact]
    public async Task Three_scents_are_printed_with_half_the_clicks_and_fields_or_less()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var hand = new Hand(window.Page);
        await window.GoAsync("/");

        var business = await hand.Do("business", async () =>
        {
            await hand.Fill("#shop", "Thistlepond Bench");
            await hand.Fill("#address", "14 Sample Mill Road\nLower Wendle ME 00000");
            await hand.Fill("#contact", "555-0127");
        });
        var materials = await hand.Do("ten materials", async () =>
        {
            foreach (var good in new[] { "white-base", "castor-oil", "shea-butter", "vitamin-e" })
                await hand.Click($"#good-{good}");
            await hand.Fill("#scents", "Moss Wall, oakmoss, green\nSalt Meadow, sea lavender, blue\nPeach Morning, white peach, pink");
        });
        var recipes = await hand.Do("three recipes", async () =>
        {
            await hand.Fill("#amount-white-base", "1.5 lb");
            await hand.Fill("#amount-castor-oil", "1 tsp");
            await hand.Fill("#amount-shea-butter", "½ oz");
            await hand.Fill("#amount-vitamin-e", "2 g");
            await hand.Fill("#amount-fragrance", "1.5 % of batch");
            await hand.Fill("#amount-colour", "0.6 g");
            await hand.Fill("#pieces", "6");
            await hand.Fill("#net", "4 oz");
            await hand.Click("#print-first");
            await window.Page.Locator("h1", new PageLocatorOptions { HasTextString = "Print Moss Wall" }).WaitForAsync();
        });
        Assert.Equal(10, Directory.EnumerateFiles(Path.Combine(window.Folder, "materials")).Count());
        var sheets = await hand.Do("three sheets", async () =>
        {
            await Assertions.Expect(window.Page.GetByAltText("The label of Moss Wall", new() { Exact = false }).First).ToBeVisibleAsync();
            await hand.Click("#make-each");
            await window.Page.Locator("#each-sheets").WaitForAsync();
        });

        hand.Report(TestContext.Current.TestOutputHelper!);
        Within(business, 1, 6);
        Within(materials, 40, 49);
        Within(recipes, 18, 33);
        // Three scents, one press: a sheet of each, and each has its own lot in the books.
        Within(sheets, 9, 3);
        var printed = OpenBooks.Open(window.Folder).Read().Printings.ToArray();
        Assert.Equal(["Moss Wall", "Salt Meadow", "Peach Morning"], printed.Select(p => p.Variant));
        Assert.Equal(3, printed.Select(p => p.Lot).Distinct().Count());
        Assert.Single(printed.Select(p => p.Labels).Distinct());
        var all = new[] { business, materials, recipes, sheets };
        Assert.InRange(all.Sum(c => c.Clicks), 1, 35);
        Assert.InRange(all.Sum(c => c.Fields), 1, 47);
        Assert.Empty(window.Complaints);
    }

    private static void Within(Count now, int clicks, int fields)
    {
        Assert.InRange(now.Clicks, 0, clicks / 2);
        Assert.InRange(now.Fields, 0, fields / 2);
    }

    private sealed record Count(string Task, int Clicks, int Fields, int Characters, TimeSpan Took);

    // A person's hands: each press of a button and each choice is a click, each field typed into a field.
    private sealed class Hand(IPage page)
    {
        private readonly List<Count> _counts = [];
        private int _clicks;
        private int _fields;
        private int _characters;

        public async Task<Count> Do(string task, Func<Task> work)
        {
            (_clicks, _fields, _characters) = (0, 0, 0);
            var watch = Stopwatch.StartNew();
            await work();
            _counts.Add(new(task, _clicks, _fields, _characters, watch.Elapsed));
            return _counts[^1];
        }

        public async Task Click(string what)
        {
            _clicks++;
            await page.Locator(what).First.ClickAsync();
        }

        public async Task Choose(string what, string option)
        {
            _clicks++;
            await page.SelectOptionAsync(what, option);
        }

        public async Task Fill(string what, string text)
        {
            _fields++;
            _characters += text.Length;
            await page.FillAsync(what, text);
        }

        public void Report(ITestOutputHelper into)
        {
            into.WriteLine("task             clicks  fields  characters  seconds (the machine's, no person's)");
            foreach (var c in _counts)
                into.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{c.Task,-16} {c.Clicks,6}  {c.Fields,6}  {c.Characters,10}  {c.Took.TotalSeconds,7:0.0}"));
            into.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{"all",-16} {_counts.Sum(c => c.Clicks),6}  {_counts.Sum(c => c.Fields),6}  {_counts.Sum(c => c.Characters),10}  {_counts.Sum(c => c.Took.TotalSeconds),7:0.0}"));
        }
    }
}
