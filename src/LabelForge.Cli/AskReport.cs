using LabelForge.Composition.Asking;
using LabelForge.Declarations;

namespace LabelForge.Cli;

/// <summary>Messages to suppliers, for a person and as data.</summary>
internal static class AskReport
{
    public static void Write(SupplierQuestions questions)
    {
        if (questions.Open > 0)
            Console.WriteLine($"\nThe answers to what follows would settle about {Count(questions.Settled)} of {questions.Open} open pairs.");
        foreach (var letter in questions.Letters)
        {
            Console.WriteLine($"\nTo: {letter.Addressed}{(letter.Questions.Any(q => q.Allergens is null) ? $" (settles about {Count(letter.Settles)})" : "")}\nSubject: {letter.Subject}\n");
            foreach (var line in letter.Text.Split('\n'))
                Console.WriteLine($"    {line}");
            Console.WriteLine("\n  Where the answers go:");
            foreach (var (question, at) in letter.Questions.Select((q, at) => (q, at)))
                Console.WriteLine(Invariant($"  {at + 1}. {question.Answer}"));
        }
    }

    public static JsonObject Data(SupplierQuestions questions) => new JsonObject
    {
        ["open"] = questions.Open,
        ["settles"] = Math.Round(questions.Settled, 2),
        ["messages"] = questions.Letters.ToJson(l => new JsonObject
        {
            ["to"] = l.To,
            ["addressed"] = l.Addressed,
            ["subject"] = l.Subject,
            ["text"] = l.Text,
            ["mailto"] = l.Mailto,
            ["settles"] = Math.Round(l.Settles, 2),
            ["questions"] = l.Questions.ToJson(q => new JsonObject
            {
                ["material"] = q.Material.Name,
                ["constituent"] = q.Constituent,
                ["allergens"] = q.Allergens is { } asked ? asked.ToJson() : null,
                ["overPercent"] = q.Over?.AtLeast * 100,
                ["bandsPercent"] = q.IsBands ? ShareBands.Edges.ToJson(e => e * 100) : null,
                ["asked"] = q.Asked,
                ["settles"] = Math.Round(q.Settles, 2),
                ["file"] = q.Material.File,
                ["line"] = q.Line,
                ["answer"] = q.Answer,
            }),
        }),
    };

    private static string Count(double pairs) => Math.Round(pairs).ToString("0", CultureInfo.InvariantCulture);
}
