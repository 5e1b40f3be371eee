using System.Text;
using LabelForge.Lots;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>Lot codes, item numbers, element strings. Always holds: nothing is thrown; what is
/// printed is read as the same; a refusal has words.</summary>
internal static class LotTarget
{
    public static readonly string[] Words = ["26R25-01E", "(01)", "09521321000018", "(10)", "(11)261125", "(17)", "(21)", "]C1", "]d2",
        "\u001D", "-", "O", "l", "00", "99"];

    public static void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        if (LotCode.Parse(text) is { IsValue: true, Value: var lot })
            Holds(LotCode.Parse(lot.ToString()) is { IsValue: true, Value: var again } && again.Equals(lot),
                "a lot printed is read as the same");
        if (Gtin.Parse(text) is { IsValue: true, Value: { } gtin })
            Holds(Gtin.Parse(gtin.Fourteen) is { IsValue: true, Value: { } again } && again.Fourteen == gtin.Fourteen,
                "an item number printed is read as the same");
        var parsed = Gs1ElementString.Parse(text);
        Holds(parsed.IsValue || (parsed.Wrong.Length > 0 && parsed.Write.Length > 0), "a refusal says what is wrong and what to write");
        if (!parsed.IsValue)
            return;
        var sent = parsed.Value.Message;
        Holds(Gs1ElementString.Parse(sent) is { IsValue: true, Value: { } back } && back.Message == sent,
            "an element string sent is read as the same");
        // Brackets may stand in a lot (set 82), so that "(10)26R(10)2" as printed for people
        // cannot be told apart; what a scanner sends can.
        var shown = parsed.Value.ToString();
        Holds(parsed.Value.Elements.Any(e => e.Value.Contains('(', StringComparison.Ordinal))
            || Gs1ElementString.Parse(shown) is { IsValue: true, Value: { } read } && read.Message == sent,
            "an element string printed is read as the same");
        Holds(parsed.Value.DigitalLink("https://id.example.com").IsValue, "an element string has a link");
    }
}
