using LabelForge.Benchmarks.Floor;

// empty | one INK OUT | redraw INK SHEETS OUT | form INK SHEETS OUT | pdfsharp INK SHEETS OUT
switch (args)
{
    case ["empty"]:
        return 0;
    case ["one", var ink, var to]:
        SkiaLoop.WriteLabel(Ink.Read(ink), to);
        return 0;
    case ["redraw", var ink, var sheets, var to]:
        SkiaLoop.WriteSheets(Ink.Read(ink), int.Parse(sheets), to);
        return 0;
    case ["form", var ink, var sheets, var to]:
        FormFile.WriteSheets(Ink.Read(ink), int.Parse(sheets), to);
        return 0;
    case ["pdfsharp", var ink, var sheets, var to]:
        PdfSharpLoop.WriteSheets(Ink.Read(ink), int.Parse(sheets), to);
        return 0;
    default:
        Console.Error.WriteLine("empty | one INK OUT | redraw INK SHEETS OUT | form INK SHEETS OUT | pdfsharp INK SHEETS OUT");
        return 2;
}
