using System.Buffers.Text;

namespace LabelForge.Print.Output.Pdf;

/// <summary>Takes the drawings of a Skia document over into another: fonts, pictures and states under new numbers, each once.</summary>
internal sealed class PdfObjectImporter(SkiaPdf from, PdfWriter into)
{
    private readonly Dictionary<int, int> _numbers = [];

    /// <summary>What a page draws, still deflated.</summary>
    public ReadOnlySpan<byte> Content(int page) => from.Stream(SkiaPdf.Reference(from.Body(page), "/Contents "u8));

    /// <summary>What a page draws with, as a dictionary for the new document; the objects that it names are written.</summary>
    public ReadOnlySpan<byte> Resources(int page) => Renumbered(Dictionary(SkiaPdf.Value(from.Body(page), "/Resources "u8)));

    /// <summary>The new number of the one font that a page writes with.</summary>
    public int OnlyFont(int page)
    {
        var named = SkiaPdf.Value(Resources(page), "/Font <<"u8);
        return SkiaPdf.Reference(named, " "u8);
    }

    // The new number of an object; it is written, after those that it names.
    private int Moved(int number)
    {
        if (_numbers.TryGetValue(number, out var known))
            return known;
        var moved = _numbers[number] = into.Reserve();
        var body = Renumbered(from.Body(number));
        var stream = from.Stream(number);
        if (stream.IsEmpty)
        {
            into.Write(moved, body);
        }
        else
        {
            // Its length stands in the body already.
            into.WriteStreamAsItIs(moved, body, stream);
        }
        return moved;
    }

    // The dictionary that a text begins with, to its own closing brackets.
    private static ReadOnlySpan<byte> Dictionary(ReadOnlySpan<byte> text)
    {
        var depth = 0;
        for (var at = 0; at + 1 < text.Length; at++)
        {
            if (text[at] == '<' && text[at + 1] == '<')
                (depth, at) = (depth + 1, at + 1);
            else if (text[at] == '>' && text[at + 1] == '>')
                (depth, at) = (depth - 1, at + 1);
            if (depth == 0)
                return text[..(at + 1)];
        }
        throw new InvalidOperationException("A dictionary of the drawing does not end.");
    }

    private ReadOnlySpan<byte> Renumbered(ReadOnlySpan<byte> body)
    {
        var text = new PdfText();
        while (body.IndexOf(" 0 R"u8) is var at and >= 0)
        {
            var digits = at;
            while (digits > 0 && body[digits - 1] is >= (byte)'0' and <= (byte)'9')
                digits--;
            if (digits == at || !Utf8Parser.TryParse(body[digits..at], out int number, out _))
                throw new InvalidOperationException("A reference of the drawing names no object.");
            text.Add(body[..digits]).Add(Moved(number)).Add(" 0 R"u8);
            body = body[(at + " 0 R"u8.Length)..];
        }
        return text.Add(body).Written;
    }
}
