using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>attach</c>: keeps a paper or a picture beside the books.</summary>
internal static class AttachVerb
{
    public static Command Build()
    {
        var verb = new Verb("attach", "Keeps a certificate, a data sheet, an invoice or a photo beside the books, by its digest");
        var file = verb.Argument<string>("FILE", "The paper or picture; it is copied");
        var about = verb.Option<string>("--to",
            "What it belongs to: a bottle (M3), a lot, a material, a product, or business", required: true);
        var kind = verb.Option<string>("--kind", AttachmentKinds.Listed, "other");
        var revision = verb.Option<string?>("--revision", "Its revision, as it stands on it");
        var issued = verb.Option<string?>("--issued", "The day on it, YYYY-MM-DD");
        var until = verb.Option<string?>("--holds-until", "The last day on which it holds, YYYY-MM-DD");
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var path = r.GetValue(file)!;
            if (!File.Exists(path))
                throw new InputException(path, 0, "call.no-such-attachment");
            if (AttachmentKinds.What(r.GetValue(kind)!) is null)
                throw new InputException("attachment.kind", ("kind", r.GetValue(kind)), ("listed", AttachmentKinds.Listed));
            if (new FileInfo(path).Length > AttachmentFolder.MostBytes)
                throw new InputException(path, 0, "attachment.too-large", ("most-bytes", AttachmentFolder.MostBytes / 1_000_000));
            var book = BookOptions.Book(workshop);
            var to = book.Ask(books => AttachedTo.Find(workshop, books, r.GetValue(about)!));
            var kept = AttachmentFolder.Keep(book, workshop.Folder, File.ReadAllBytes(path), digest => new Attachment
            {
                On = options.On(r),
                By = options.By(r),
                Note = options.Note(r),
                Digest = digest,
                FileName = Path.GetFileName(path),
                Kind = r.GetValue(kind)!,
                About = to,
                Revision = r.GetValue(revision),
                Issued = r.GetValue(issued) is { } day ? Shared.Date(day) : null,
                BestBefore = r.GetValue(until) is { } last ? Shared.Date(last) : null,
            });
            return options.Told(r, new JsonObject
            {
                ["attachment"] = kept.Id,
                ["to"] = to,
                ["kind"] = kept.Kind,
                ["file"] = kept.FileName,
                ["digest"] = kept.Digest,
                ["revision"] = kept.Revision,
                ["issued"] = kept.Issued?.ToJson(),
                ["holdsUntil"] = kept.BestBefore?.ToJson()
            }, Invariant($"Attachment {kept.Id}: {kept.FileName} is kept with {to}, SHA-256 {kept.Digest}."));
        });
    }
}
