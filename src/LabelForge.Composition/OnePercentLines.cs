namespace LabelForge.Composition;

/// <summary>
/// Where the order by weight ends: the shares at or under which ingredients may follow in any order. The law of the market and
/// the day sets them, at 1 % wherever it is known (21 CFR 701.3(f)(2); Regulation (EC) No 1223/2009 Art. 19(1)(g)); whoever asks for
/// a proof brings them.
/// </summary>
/// <remarks>The laws count "1 percent or less" and "less than 1 %"; the proof uses "not more than".</remarks>
/// <param name="Label">The line of the label that is written, a fraction of the finished product from 0 to below 1.</param>
/// <param name="Lists">The line of suppliers' lists that are written as labels are, a fraction of the material.</param>
public sealed record OnePercentLines(decimal Label, decimal Lists);
