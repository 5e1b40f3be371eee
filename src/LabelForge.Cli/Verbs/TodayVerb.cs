using LabelForge.Cli.Handover;
using LabelForge.Days;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>today</c>: what is open.</summary>
internal static class TodayVerb
{
    public static Command Build()
    {
        var verb = new Verb("today",
            "What is open: labels to print, batches to close, dates that near, complaints, materials that run low, questions "
                + "without an answer");
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooksWhereKept(options.Folder, r =>
        {
            var workshop = options.Workshop(r);
            Shared.SayRecipesLeftOut(workshop);
            var today = BookOptions.AskIfAny(workshop, books => OpenToday.Of(workshop, books, options.On(r)))
                .And(OpenQuestions.Of(workshop, options.On(r)));
            if (options.Json(r))
            {
                JsonOut.Write(new JsonObject
                {
                    ["on"] = today.On.ToJson(),
                    ["open"] = today.Open
                        .ToJson(o => new JsonObject
                        {
                            ["kind"] = o.Kind.ToString().ToLowerInvariant(),
                            ["title"] = o.Title,
                            ["detail"] = o.Detail,
                            ["lot"] = o.Lot,
                            ["pot"] = o.Pot,
                            ["lots"] = o.Lots.IsEmpty ? null : o.Lots.ToJson(),
                            ["product"] = o.Product,
                            ["material"] = o.Material,
                            ["supplier"] = o.Supplier,
                            ["bottle"] = o.Bottle,
                            ["count"] = o.Count,
                            ["by"] = o.By?.ToJson()
                        }),
                    ["shelf"] = today.Shelf
                        .ToJson(p => new JsonObject
                        {
                            ["product"] = p.Product,
                            ["name"] = p.Name,
                            ["left"] = p.Left,
                            ["withoutLabels"] = p.WithoutLabels,
                        }),
                });
                return Exit.Done;
            }
            foreach (var open in OpenTogether.Low(OpenTogether.Labels(today.Open)))
            {
                Console.WriteLine(open.Title);
                Console.WriteLine($"  {open.Detail}");
                if (open is { Kind: OpenKind.Labels, Lot: null })
                    Console.WriteLine("  labelforge print --today prints them, on as few sheets as can be.");
            }
            if (today.Open.IsEmpty)
                Console.WriteLine("Nothing is open.");
            if (!today.Shelf.IsEmpty)
                Console.WriteLine($"On the shelf: {string.Join(", ", today.Shelf.Select(p => $"{p.Left} {p.Name}"))}.");
            return Exit.Done;
        });
    }
}
