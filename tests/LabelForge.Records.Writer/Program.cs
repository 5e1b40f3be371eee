using LabelForge.Records.Books;
using LabelForge.Records.Writer;

// A program that does nothing but write in the books, to be killed while it does. It starts once and splits a new process
// off for every round, so that hundreds of real kills take seconds. One command a line on standard input: "write FOLDER",
// or "make FOLDER" for books that are not there yet. It answers "pid N", then a line for every entry acknowledged, and
// "killed" or "ended" when the process is gone.
Writing.WarmUp();
Fork.Say("ready");
while (Console.In.ReadLine() is { } command)
{
    var (what, folder) = (command[..command.IndexOf(' ')], command[(command.IndexOf(' ') + 1)..]);
    var killed = Fork.Run(() =>
    {
        if (what == "make")
            _ = OpenBooks.Open(folder);
        else
            Writing.Forever(OpenBooks.Open(folder), Fork.Say);
        Fork.Say("made");
    }, id => Fork.Say($"pid {id}"));
    Fork.Say(killed ? "killed" : "ended");
}
